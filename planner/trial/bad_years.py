"""The bad-years curve: what the mean season costs as an order is chosen more and more for the worst tenth.

Takes a sizing problem and its plan; gives points, one a weight, each the best order found for that weight, judged on
the seasons planned with. Every weight may take any order found, so along the curve the mean never rises and the bad
years never fall. Time is the caller's: `left()` says the seconds that remain.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass, replace

from planner.plan.trial_records import BadYearsPoint, BadYearsSection
from planner.plan.words import cents, number, percent, sum_words
from planner.sizing.records import BadYears
from planner.solution import solve_apart
from planner.solution.valuing import ordered
from planner.trial.judging import Judge, value_of
from planner.trial.statistics import worst_mean

WEIGHTS = (0.0, 0.2, 0.4, 0.6, 0.8, 0.95)
LEAST_SECONDS = 5.0


@dataclass(frozen=True, kw_only=True)
class Found:
    """An order with its worth in every season planned with."""

    packs: dict
    spend: float
    worths: tuple[float, ...]


@dataclass(frozen=True, kw_only=True)
class CurveEffort:
    """How hard to look: the solver, its gap, the seconds a weight, those left in all, and who is told."""

    gap: float = 0.001
    seconds: float = 60.0
    left: Callable[[], float] = lambda: math.inf
    tell: Callable[[str], None] = lambda stage: None
    solve: Callable = solve_apart


def bad_years_curve(problem, plan, *, weights=WEIGHTS, effort=None):
    """The section of the report, or None where fewer than two weights could be solved in time."""
    effort = effort or CurveEffort()
    own = problem.bad_years
    weights = sorted({*weights, own.weight})
    judge = Judge(problem, breathe=lambda: effort.tell("drawing the bad-years curve"))
    chances = [scenario.probability for scenario in problem.scenarios]
    pool, solved = [], []
    for at, weight in enumerate(weights):
        effort.tell(f"weighing bad years, {at + 1} of {len(weights)}")
        found = _best_at(problem, plan, weight, judge, effort, weights_left=len(weights) - at)
        if found is not None:
            pool.append(found)
            solved.append(weight)
    if len(solved) < 2:
        return None
    points = []
    for weight in solved:
        wanted = BadYears(weight=weight, share=own.share)
        best = max(pool, key=lambda found: value_of(found.worths, wanted, chances))
        points.append(_point(best, weight, own, chances))
    return BadYearsSection(
        share=own.share,
        seasons=len(chances),
        points=tuple(points),
        sentences=_sentences(points, own, problem.money, left_out=len(weights) - len(solved)),
    )


def _best_at(problem, plan, weight, judge, effort, *, weights_left):
    """The order for that weight, the plan's own where it is the weight planned with; None where time is out."""
    packs = plan.packs() if weight == problem.bad_years.weight else None
    if packs is None:
        seconds = min(effort.seconds, effort.left() / weights_left)
        if seconds < LEAST_SECONDS:
            return None
        weighed = replace(problem, bad_years=replace(problem.bad_years, weight=weight))
        other = effort.solve(weighed, gap=effort.gap, seconds=seconds, prices=False)
        if not other.is_order:
            return None
        packs = other.packs()
    worths = judge.worths(packs)
    if worths is None:
        return None
    return Found(packs=packs, spend=ordered(problem, packs).spend, worths=worths)


def _point(found, weight, own, chances):
    return BadYearsPoint(
        weight=weight,
        spend=cents(found.spend),
        mean=cents(value_of(found.worths, BadYears(), chances)),
        bad_years=cents(worst_mean(found.worths, own.share, chances)),
        chosen=weight == own.weight,
    )


def _sentences(points, own, money, *, left_out):
    first, last = points[0], points[-1]
    tenth = "tenth" if abs(own.share - 0.1) < 1e-9 else percent(own.share)
    gained, given = last.bad_years - first.bad_years, first.mean - last.mean
    if gained < 1:
        said = [
            f"No other order does better in the worst {tenth} of seasons: looking to bad years buys nothing here."
        ]
    else:
        said = [
            f"Looking to bad years alone lifts the worst {tenth} of seasons by {sum_words(gained, money)} and costs "
            f"{sum_words(given, money)} in the mean season."
        ]
    weighed = (
        "gives bad years no weight of their own" if not own.weight else f"weighs them {percent(own.weight)}"
    )
    said.append(f"This order {weighed}.")
    if left_out:
        said.append(
            f"{number(left_out)} weight{'' if left_out == 1 else 's'} could not be tried in the time allowed."
        )
    return tuple(said)
