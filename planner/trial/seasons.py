"""Fresh seasons to try an order on, and the mean season.

Takes the operation, the assumptions, the sizing problem an order was planned with, how many and a seed; gives a
problem with the same prices and stock whose scenarios nobody planned with, batch by batch, and the one season that
is the mean of many. Each batch is a draw of its own. Solves nothing.
"""

import itertools
from collections.abc import Mapping
from dataclasses import dataclass, fields, replace

from planner.projection import project
from planner.requirement import sizing_problem
from planner.season.scenarios import draw
from planner.sizing.records import Problem

MOST_BATCHES = 10
FEWEST_A_BATCH = 5


@dataclass(frozen=True, kw_only=True)
class Fresh:
    """`problem` holds the seasons of all batches, equally likely; `batches` the first and last + 1 of each."""

    problem: Problem
    batches: tuple[tuple[int, int], ...]

    def batch(self, number):
        """The problem of one batch alone."""
        first, end = self.batches[number]
        return of_seasons(self.problem, self.problem.scenarios[first:end])

    def joined(self, count):
        """The same seasons in `count` batches at most, whole draws put together."""
        count = min(count, len(self.batches))
        at = [round(number * len(self.batches) / count) for number in range(count + 1)]
        edges = [*(first for first, _end in self.batches), self.batches[-1][1]]
        return replace(self, batches=tuple((edges[a], edges[b]) for a, b in itertools.pairwise(at)))


def sizes_of(count, most=MOST_BATCHES):
    """So many seasons in at most so many batches of like size, none under five where there are five."""
    batches = max(1, min(most, count // FEWEST_A_BATCH))
    return [count // batches + (number < count % batches) for number in range(batches)]


def fresh_seasons(
    operation,
    assumptions,
    problem,
    *,
    count,
    seed,
    batches=MOST_BATCHES,
    enough=lambda seasons: False,
    breathe=lambda: None,
):
    """Up to `count` seasons in so many batches; after each whole batch `enough(seasons so far)` may end it. `breathe` is called before
    each season: it may raise to stop the work."""
    projections: list = []
    drawn_batches: list = []
    for number, size in enumerate(sizes_of(count, batches)):
        if drawn_batches and enough(len(projections)):
            break
        first = len(projections)
        for scenario in draw(operation, assumptions, count=size, seed=seed + number):
            breathe()
            renamed = replace(scenario, code=f"fresh-{number}-{scenario.code}")
            projections.append(project(operation, assumptions, renamed))
        drawn_batches.append((first, len(projections)))
    drawn = sizing_problem(operation, assumptions, projections, budget=problem.budget)
    return Fresh(
        problem=of_seasons(with_all_of(problem, drawn), drawn.scenarios), batches=tuple(drawn_batches)
    )


def of_seasons(problem, scenarios):
    """The problem with these scenarios, equally likely."""
    chance = 1 / len(scenarios)
    return replace(problem, scenarios=tuple(replace(scenario, probability=chance) for scenario in scenarios))


def with_all_of(problem, other):
    """The problem, with what only the other knows: parts, suppliers, offers, recipes, stock of its parts; an offer
    of the season may be had in the weeks of either."""
    known = {part.code for part in problem.parts}
    weeks = {offer.code: offer.order_periods for offer in other.offers if offer.when == "later"}
    offers = [
        replace(offer, order_periods=tuple(sorted({*offer.order_periods, *weeks.get(offer.code, ())})))
        if offer.when == "later"
        else offer
        for offer in problem.offers
    ]
    return replace(
        problem,
        parts=_joined(problem.parts, other.parts),
        suppliers=_joined(problem.suppliers, other.suppliers),
        offers=_joined(offers, other.offers),
        recipes=_joined(problem.recipes, other.recipes),
        stock=(*problem.stock, *(stock for stock in other.stock if stock.part not in known)),
    )


def _joined(rows, more):
    codes = {row.code for row in rows}
    return (*rows, *(row for row in more if row.code not in codes))


def mean_season(scenarios):
    """One scenario record, each figure the mean of those given, by its chance; counts are rounded."""
    chances = [scenario.probability for scenario in scenarios]
    means = {
        field.name: _mean([getattr(scenario, field.name) for scenario in scenarios], chances)
        for field in fields(scenarios[0])
        if field.name not in ("code", "probability")
    }
    return replace(scenarios[0], code="mean", probability=1.0, **means)


def _mean(values, chances):
    first = values[0]
    if isinstance(first, Mapping):
        return {key: _mean([value[key] for value in values], chances) for key in first}
    if isinstance(first, tuple):
        return tuple(_mean(list(each), chances) for each in zip(*values, strict=True))
    if isinstance(first, bool) or not isinstance(first, int | float):
        return first
    mean = sum(chance * value for chance, value in zip(chances, values, strict=True)) / sum(chances)
    return round(mean) if isinstance(first, int) else mean


def mean_problem(operation, assumptions, problem, scenarios):
    """The problem of the mean season alone: what one plans with who takes the mean for the truth."""
    projection = project(operation, assumptions, mean_season(scenarios))
    drawn = sizing_problem(operation, assumptions, [projection], budget=problem.budget)
    return of_seasons(with_all_of(problem, drawn), drawn.scenarios)
