"""The trial: this order against others on fresh seasons, the same for all of them.

Takes the operation, the assumptions, the sizing problem, the order's packs and, where the keeper told it, their
usual order; gives a Trial. Time is the caller's: `left()` says the seconds that remain, and what they do not allow is
left out and named. `tell(stage)` is told where it is and may raise to stop the work.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass
from functools import partial

from planner.projection import project
from planner.requirement import sizing_problem
from planner.season.scenarios import draw
from planner.solution import solve_apart
from planner.solution.valuing import ordered
from planner.trial.judging import Judge, foresight
from planner.trial.records import (
    FORESIGHT,
    MEAN,
    NOTHING,
    OTHER,
    OURS,
    RULE,
    YOURS,
    Contender,
    OtherSeed,
    Trial,
)
from planner.trial.replications import statistical_gap
from planner.trial.seasons import fresh_seasons, mean_problem
from planner.trial.thumb import rule_of_thumb

FAR = 1_000_003  # a fresh season's seed lies that far from the seeds planned with
FORESEEN = 60  # seasons tried with perfect foresight
LEAST_SEASONS = 30


def always():
    return math.inf


def silent(stage, bound=None, gap=None):
    """Progress told to nobody."""


@dataclass(frozen=True, kw_only=True)
class Effort:
    """How hard to try: `count` fresh seasons, the solver with its gap, the seconds for all and those left."""

    count: int = 300
    seed: int = 1
    gap: float = 0.001
    seconds: float = 60.0
    left: Callable[[], float] = always
    tell: Callable = silent
    solve: Callable = solve_apart
    other_seed: bool = True
    batches: int = 5

    def enough(self, share):
        """True once less than that share of the time remains."""
        return self.left() < share * self.seconds

    def solved(self, problem, *, share=1.0, **settings):
        """The problem's plan, within that share of what is left."""
        seconds = max(1.0, min(self.seconds, share * self.left()))
        return self.solve(problem, gap=self.gap, seconds=seconds, **{"prices": False, **settings})


def trial_of(operation, assumptions, problem, packs, *, scenarios, usual=None, effort=None):
    """The trial of the order `packs`. `scenarios`: the season scenarios it was planned with, for their mean season;
    `usual`: {(offer, period): packs} of the keeper's usual order, or None."""
    effort = effort or Effort()
    left_out: list[str] = []
    effort.tell("drawing fresh seasons")
    fresh = fresh_seasons(
        operation,
        assumptions,
        problem,
        count=effort.count,
        seed=effort.seed + FAR,
        enough=lambda seasons: seasons >= LEAST_SEASONS and effort.enough(0.75),
    )
    breathe = partial(effort.tell, "trying the order on fresh seasons")
    judge = Judge(fresh.problem, breathe=breathe)
    contenders = _contenders(
        judge, _orders(operation, assumptions, problem, packs, scenarios, usual, effort), left_out
    )
    ours = contenders[0]
    foreseen = _foresight(fresh, effort)
    other = _other_seed(operation, assumptions, problem, judge, ours, effort, left_out, len(scenarios))
    gap = _gap(fresh, ours, effort, left_out)
    return Trial(
        seasons=len(fresh.problem.scenarios),
        asked=effort.count,
        contenders=contenders,
        foresight=foreseen,
        gap=gap,
        other_seed=other,
        left_out=tuple(left_out),
    )


def _orders(operation, assumptions, problem, packs, scenarios, usual, effort):
    """(key, packs) of each order, this one first."""
    yield OURS, packs
    if usual is not None:
        yield YOURS, usual
    yield RULE, rule_of_thumb(operation, assumptions, problem)
    effort.tell("ordering for the mean season")
    mean = effort.solved(mean_problem(operation, assumptions, problem, scenarios), share=0.25)
    if mean.is_order:
        yield MEAN, mean.packs()
    yield NOTHING, {}


def _contenders(judge, orders, left_out):
    """Each order judged; one under which some season's musts cannot be met is named, not judged."""
    found = []
    for key, packs in orders:
        worths = judge.worths(packs)
        if worths is None:
            left_out.append(key)
            continue
        found.append(
            Contender(key=key, packs=packs, spend=ordered(judge.problem, packs).spend, worths=worths)
        )
    return tuple(found)


def _foresight(fresh, effort):
    effort.tell("looking into the future")
    bounds = foresight(
        fresh.problem,
        enough=lambda seasons: (
            seasons >= FORESEEN or (seasons >= LEAST_SEASONS and effort.enough(0.3)) or effort.enough(0.0)
        ),
        breathe=partial(effort.tell, "looking into the future"),
    )
    return Contender(key=FORESIGHT, packs={}, spend=None, worths=bounds) if len(bounds) > 1 else None


def _other_seed(operation, assumptions, problem, judge, ours, effort, left_out, count):
    """The same planning from other seasons, its order set beside this one."""
    if not effort.other_seed:
        return None
    if effort.enough(0.2):
        left_out.append(OTHER)
        return None
    effort.tell("planning with other seasons")
    scenarios = draw(operation, assumptions, count=count, seed=effort.seed + 1)
    projections = [project(operation, assumptions, scenario) for scenario in scenarios]
    drawn = sizing_problem(operation, assumptions, projections, budget=problem.budget)
    plan = effort.solved(drawn, share=0.5)
    worths = judge.worths(plan.packs()) if plan.is_order and _known(judge.problem, plan.packs()) else None
    if worths is None:
        left_out.append(OTHER)
        return None
    order = Contender(key=OTHER, packs=plan.packs(), spend=plan.spend, worths=worths)
    return compared(order, ours)


def compared(order, ours):
    """How an order differs from this one, in packs and money."""
    lines = {key for each in (order, ours) for key, count in each.packs.items() if count}
    apart = {key: abs(order.packs.get(key, 0) - ours.packs.get(key, 0)) for key in lines}
    return OtherSeed(
        order=order,
        lines=len(lines),
        changed=sum(1 for packs in apart.values() if packs > 1e-9),
        packs=round(sum(apart.values())),
        spend_more=order.spend - ours.spend,
        worth_more=order.over(ours),
    )


def _known(problem, packs):
    offers = {offer.code for offer in problem.offers}
    return all(offer in offers for offer, _period in packs)


def _gap(fresh, ours, effort, left_out):
    """The statistical gap, from as many batches as the time allows."""
    effort.tell("asking how much better one could be")

    def best(batch, **settings):
        return effort.solved(batch, share=0.5, **settings)

    found = statistical_gap(
        fresh,
        ours.worths,
        solve=best,
        most_batches=effort.batches,
        enough=lambda batches: effort.enough(0.02),
        breathe=partial(effort.tell, "asking how much better one could be"),
    )
    if found is None:
        left_out.append("gap")
    return found
