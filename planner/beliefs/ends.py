"""An answer set lower and higher, all else as answered, and the sizing problem of the same seasons then.

Takes the operation and the assumptions an order was planned with; gives the two ends of a doubt and the problem at an
end, its seasons drawn by the same seed: the same luck, so that only the answer differs. Solves nothing.
"""

import math
from dataclasses import dataclass, replace

from planner.beliefs.doubt import CROPS, MEAN, PLUS, TIMES, WINDOWS
from planner.plan.beliefs import answer_words
from planner.plan.words import percent, sum_words, units_word
from planner.projection import project
from planner.requirement import sizing_problem
from planner.season.assumptions import Assumptions
from planner.season.operation import Operation
from planner.season.questions import question_of
from planner.season.scenarios import SUMMER_CORRELATION, draw
from planner.season.survival import WINTERS_HELD_BACK
from planner.trial.seasons import with_all_of

NINE_OF_TEN = 1.645  # standard deviations of the normal within which nine years of ten lie
LOW, HIGH = "low", "high"


@dataclass(frozen=True, kw_only=True)
class Beliefs:
    """What is believed of a season: the books and the answers."""

    operation: Operation
    assumptions: Assumptions


@dataclass(frozen=True, kw_only=True)
class OtherValue:
    """One end of a doubt: the value, as it reads, and what is then believed."""

    side: str
    value: float
    words: str
    beliefs: Beliefs


def answered(doubt, beliefs):
    """What the keeper answered (or the default): (value, words)."""
    if doubt.kind == WINDOWS:
        return 1.0, percent(1.0)
    if doubt.kind == CROPS:
        told = beliefs.assumptions
        ratio = told.crop_best / max(told.crop_worst, 0.01)
        return ratio, _words(doubt, ratio, beliefs)
    value = getattr(beliefs.assumptions, key_of(doubt, beliefs))
    return value, _words(doubt, value, beliefs)


def other_values(doubt, beliefs):
    """The low and the high end; one that is no other value than the answer is left out."""
    value, _words_of = answered(doubt, beliefs)
    if value is None or (doubt.needs and not getattr(beliefs.assumptions, doubt.needs)):
        return ()
    found = []
    for side, other in zip((LOW, HIGH), _span(doubt, value, beliefs), strict=True):
        if not math.isclose(other, value, abs_tol=1e-9):
            found.append(
                OtherValue(
                    side=side,
                    value=other,
                    words=_words(doubt, other, beliefs),
                    beliefs=believing(doubt, other, beliefs),
                )
            )
    return tuple(found)


def key_of(doubt, beliefs):
    """The question's key; honey in a super is asked by depth."""
    if doubt.key == "honey_medium_lb":
        return f"honey_{beliefs.assumptions.super_depth}_lb"
    return doubt.key


def _span(doubt, value, beliefs):
    if doubt.kind == WINDOWS:
        return doubt.low, doubt.high
    if doubt.kind == CROPS:
        return tuple(max(value, 1.02) ** by for by in (doubt.low, doubt.high))
    if doubt.kind == MEAN:
        off = NINE_OF_TEN * _off(doubt, value, beliefs.assumptions)
        ends = value - off, value + off
    elif doubt.kind == TIMES:
        ends = value * doubt.low, value * doubt.high
    else:
        assert doubt.kind == PLUS, doubt.kind
        ends = value + doubt.low, value + doubt.high
    question = question_of(key_of(doubt, beliefs))
    return tuple(_tidy(question, end, doubt, beliefs) for end in ends)


def _off(doubt, share, told):
    """Standard deviation of the mean of a few years' shares: the years told, and the published ones held beside."""
    years, correlation = WINTERS_HELD_BACK, SUMMER_CORRELATION
    if doubt.key == "survival_share":
        years, correlation = years + len(told.winters or ()), told.winter_correlation
    return math.sqrt(share * (1 - share) * correlation / years)


def _tidy(question, value, doubt, beliefs):
    """Within the question's own span, in its own kind: whole weeks, whole percents, cents."""
    value = min(max(value, question.lowest), question.highest)
    if question.kind == "week":
        return min(max(round(value), 1), 52)
    if question.kind == "whole":
        return round(value)
    value = round(value, 2 if question.kind in ("share", "money") or abs(value) < 10 else 0)
    if doubt.within:
        value = min(value, getattr(beliefs.assumptions, doubt.within))
    return value


def believing(doubt, value, beliefs):
    """The beliefs with that one value; what moves along with it moves in like measure."""
    told = beliefs.assumptions
    if doubt.kind == WINDOWS:
        yards = tuple(
            replace(
                yard,
                windows=tuple(replace(each, gain_lb=each.gain_lb * value) for each in yard.windows),
            )
            for yard in beliefs.operation.yards
        )
        return replace(beliefs, operation=replace(beliefs.operation, yards=yards))
    if doubt.kind == CROPS:
        middle, reach = math.sqrt(told.crop_best * max(told.crop_worst, 0.01)), math.sqrt(value)
        changed = {"crop_best": middle * reach, "crop_worst": middle / reach}
    else:
        key = key_of(doubt, beliefs)
        before = getattr(told, key)
        changed = {key: value}
        for also in doubt.moves:
            moved = getattr(told, also) * (value / before if before else 1)
            changed[also] = round(moved) if isinstance(getattr(told, also), int) else moved
    return replace(beliefs, assumptions=replace(told, **changed))


def problem_at(beliefs, base, *, seed):
    """The sizing problem of as many seasons as `base` has, drawn by the seed `base` was drawn by; what only `base`
    knows of offers and parts is kept, so that its order can be judged."""
    scenarios = draw(beliefs.operation, beliefs.assumptions, count=len(base.scenarios), seed=seed)
    projections = [project(beliefs.operation, beliefs.assumptions, each) for each in scenarios]
    drawn = sizing_problem(beliefs.operation, beliefs.assumptions, projections, budget=base.budget)
    return with_all_of(drawn, base)


def _words(doubt, value, beliefs):
    if doubt.kind == WINDOWS:
        return percent(value)
    if doubt.kind == CROPS:
        return percent(value - 1)
    question = question_of(key_of(doubt, beliefs))
    if question.kind == "money":
        return sum_words(round(value, 2), beliefs.operation.money, cents_too=True)
    words = answer_words(question, value)
    if question.kind == "week":
        return f"week {words}"
    unit = "" if question.kind == "share" or question.unit == "of ten" else question.unit
    return f"{words} {unit if value != 1 else _one(unit)}".strip()


def _one(unit):
    """weeks to week: asked in many, said of one."""
    return unit[:-1] if unit.endswith("s") and units_word(unit[:-1], many=True) == unit else unit
