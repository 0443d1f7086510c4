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
from planner.trial.replications import Batch, statistical_gap
from planner.trial.seasons import fresh_seasons, mean_problem
from planner.trial.thumb import rule_of_thumb

FAR = 1_000_003  # a fresh season's seed lies that far from the seeds planned with
FARTHER = 500_009  # and one of the gap's own batches that far again
FORESEEN = 300  # seasons tried with perfect foresight
LEAST_SEASONS = 30
FEWEST_BATCHES = 2  # under which there is no statistical gap to tell


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
    batches: int = 10  # for the statistical gap, at most
    batch_seasons: int | None = None  # of seasons drawn for it alone; None: the seasons tried are parted
    batch_gap: float | None = None  # what each batch's best is proven to; None: as the order

    def enough(self, share):
        """True once less than that share of the time remains."""
        return self.left() < share * self.seconds

    def solved(self, problem, *, share=1.0, **settings):
        """The problem's plan, within that share of what is left."""
        seconds = max(1.0, min(self.seconds, share * self.left()))
        return self.solve(problem, seconds=seconds, **{"gap": self.gap, "prices": False, **settings})


def trial_of(operation, assumptions, problem, packs, *, scenarios, usual=None, effort=None):
    """The trial of the order `packs`. `scenarios`: the season scenarios it was planned with, for their mean season;
    `usual`: {(offer, period): packs} of the keeper's usual order, or None."""
    effort = effort or Effort()
    left_out: list[str] = []
    fresh = fresh_seasons(
        operation,
        assumptions,
        problem,
        count=effort.count,
        seed=effort.seed + FAR,
        enough=lambda seasons: seasons >= LEAST_SEASONS and effort.enough(0.75),
        breathe=partial(effort.tell, "drawing fresh seasons"),
    )
    breathe = partial(effort.tell, "trying the order on fresh seasons")
    judge = Judge(fresh.problem, breathe=breathe)
    contenders = _contenders(
        judge, _orders(operation, assumptions, problem, packs, scenarios, usual, effort), left_out
    )
    ours = contenders[0]
    foreseen = _foresight(fresh, effort)
    other = _other_seed(operation, assumptions, problem, judge, ours, effort, left_out, len(scenarios))
    gap = _gap(_batches(operation, assumptions, problem, fresh, ours, effort), effort, left_out)
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
        assert worths is not None or key != OURS, "every must can be met in season, whatever was ordered"
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
    projections = []
    for scenario in draw(operation, assumptions, count=count, seed=effort.seed + 1):
        effort.tell("planning with other seasons")
        projections.append(project(operation, assumptions, scenario))
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


class Pace:
    """When to stop planning batches: the time is out, or the longest so far would not fit in what is left."""

    def __init__(self, effort):
        self.effort, self.longest, self.before, self.batches = effort, 0.0, effort.left(), 0

    def enough(self, batches):
        left, self.batches = self.effort.left(), batches
        if math.isfinite(left):
            self.longest = max(self.longest, self.before - left)
        self.before = left
        return self.effort.enough(0.02) or (batches >= FEWEST_BATCHES and left < self.longest)

    def share(self):
        """Of the time left, what a batch may take: the first no more than half, for one alone tells nothing."""
        return 1.0 if self.batches else 0.5


def _gap(batches, effort, left_out):
    """The statistical gap, from as many batches as the time allows."""
    effort.tell("asking how much better one could be")
    pace = Pace(effort)
    found = (
        None
        if effort.enough(0.02)
        else statistical_gap(
            batches,
            solve=lambda batch, **settings: effort.solved(
                batch, gap=effort.batch_gap or effort.gap, share=pace.share(), **settings
            ),
            enough=pace.enough,
            breathe=partial(effort.tell, "asking how much better one could be"),
        )
    )
    if found is None:
        left_out.append("gap")
    return found


def _batches(operation, assumptions, problem, fresh, ours, effort):
    """The seasons tried, put together in batches, or seasons drawn for the gap alone; one of these under which some
    season's musts cannot be met is passed over."""
    if effort.batch_seasons is None:
        joined = fresh.joined(effort.batches)
        for number, (first, end) in enumerate(joined.batches):
            yield Batch(problem=joined.batch(number), worths=ours.worths[first:end])
        return
    breathe = partial(effort.tell, "asking how much better one could be")
    for number in range(effort.batches):
        drawn = fresh_seasons(
            operation,
            assumptions,
            problem,
            count=effort.batch_seasons,
            seed=effort.seed + FAR + FARTHER + number,
            batches=1,
            breathe=breathe,
        ).problem
        worths = Judge(drawn, breathe=breathe).worths(ours.packs)
        if worths is not None:
            yield Batch(problem=drawn, worths=worths)
