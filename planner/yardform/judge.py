"""The yard form as judge: what an order made with the pooled form is worth where boxes and covers lie at yards.

Takes the operation, the assumptions, an order's packs and a budget; draws fresh scenarios, judges the order in both
forms on the same ones; gives both worths and their gap. Time is the caller's: `enough(scenarios so far)` ends it
between blocks, and `breathe` is called there and may raise to stop the work.
"""

from dataclasses import dataclass, replace

from planner.projection import project
from planner.requirement import sizing_problem
from planner.season.scenarios import draw
from planner.solution.recourse import NoRecourse, worths
from planner.yardform.form import yard_problem
from planner.yardform.hauling import with_hauling

BLOCK = 10
OUT_OF_TIME = "the time allowed ran out"


@dataclass(frozen=True, kw_only=True)
class Judged:
    """Expected money of one order, here-and-now cost in it: as the pool tells it, and told by yard."""

    scenarios: int
    pooled: float
    by_yard: float

    @property
    def gap(self):
        """By how much of its worth the pool flatters the order; below 0 where it is too modest."""
        return (self.pooled - self.by_yard) / max(1.0, abs(self.by_yard))


class NotJudged(Exception):
    """The order cannot be judged on these scenarios; the message says why."""


def never(scenarios):
    return False


def still():
    """Nothing to say between blocks."""


def judge(operation, assumptions, packs, *, budget, count=200, seed=1, enough=never, breathe=still):
    """The order's worth in both forms on up to `count` fresh scenarios; `budget` as in the problem it was made for."""
    if enough(0):
        raise NotJudged(OUT_OF_TIME)
    projections = []
    for way in draw(operation, assumptions, count=count, seed=seed):
        breathe()
        projections.append(project(operation, assumptions, way))
    problem = sizing_problem(operation, assumptions, projections, budget=budget)
    told = yard_problem(with_hauling(operation, assumptions, problem))
    pooled, by_yard = [], []
    for first in range(0, count, BLOCK):
        if enough(first):
            break
        breathe()
        pooled += worths_of(_block(problem, first), packs)
        by_yard += worths_of(_block(told, first), packs)
    if not pooled:
        raise NotJudged(OUT_OF_TIME)
    return Judged(scenarios=len(pooled), pooled=_mean(pooled), by_yard=_mean(by_yard))


def _block(problem, first):
    scenarios = problem.scenarios[first : first + BLOCK]
    chance = 1 / len(scenarios)
    return replace(problem, scenarios=tuple(replace(each, probability=chance) for each in scenarios))


def _mean(worths):
    return sum(worths) / len(worths)


def worths_of(problem, packs):
    """Each scenario's money under the given order, or NotJudged."""
    unknown = {offer for offer, _ in packs} - {offer.code for offer in problem.offers}
    if unknown:
        raise NotJudged(f"nothing in these seasons asks for what is ordered as {', '.join(sorted(unknown))}")
    try:
        return worths(problem, packs)
    except NoRecourse:
        raise NotJudged("under it a season leaves undone what must be done") from None


def worth_of(problem, packs):
    """Expected money of a given order on the problem's own scenarios."""
    money = worths_of(problem, packs)
    return sum(row.probability * own for row, own in zip(problem.scenarios, money, strict=True))
