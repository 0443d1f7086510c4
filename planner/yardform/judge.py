"""The yard form as judge: what an order made with the pooled form is worth where boxes and covers lie at yards.

Takes the operation, the assumptions, an order's packs and a budget; draws fresh scenarios, judges the order in both
forms on the same ones; gives both worths and their gap.
"""

from dataclasses import dataclass

from planner.projection import project
from planner.requirement import sizing_problem
from planner.season.scenarios import draw
from planner.solution.recourse import worths
from planner.yardform.form import yard_problem
from planner.yardform.hauling import with_hauling


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


def judge(operation, assumptions, packs, *, budget, count=200, seed=1):
    """The order's worth in both forms on `count` fresh scenarios; `budget` as in the problem it was made for."""
    ways = draw(operation, assumptions, count=count, seed=seed)
    projections = [project(operation, assumptions, way) for way in ways]
    problem = sizing_problem(operation, assumptions, projections, budget=budget)
    told = yard_problem(with_hauling(operation, assumptions, problem))
    return Judged(scenarios=count, pooled=worth_of(problem, packs), by_yard=worth_of(told, packs))


def worth_of(problem, packs):
    """Expected money of a given order on the problem's own scenarios."""
    unknown = {offer for offer, _ in packs} - {offer.code for offer in problem.offers}
    if unknown:
        raise NotJudged(f"nothing in these seasons asks for what is ordered as {', '.join(sorted(unknown))}")
    money = worths(problem, packs)
    return sum(row.probability * own for row, own in zip(problem.scenarios, money, strict=True))
