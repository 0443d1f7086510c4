"""What each season keeps at each yard week by week, what comes free there, and the supers pulled.

Takes a sizing problem, its plan, and the weeks a super takes to be extracted; gives arrays (scenario × period) by yard
and part. A super is at its yard until it is pulled, and free again once extracted. Units are those the plan serves.
"""

from collections import defaultdict
from dataclasses import dataclass

import numpy as np

SUPER, LEFT_ON = "super/", "left-on/"


@dataclass(frozen=True, kw_only=True)
class Wants:
    """(yard, part) -> pieces. `kept`: in use at the yard; spent ones from their week to the end."""

    weights: np.ndarray
    periods: int
    kept: dict
    found: dict  # cumulative, of colonies lost there
    pulled: dict  # taken off in that week, full or not
    asked: dict  # what would be in use if all were served: what else a piece would do

    def at(self, table, key):
        rows = getattr(self, table).get(key)
        return rows if rows is not None else np.zeros((len(self.weights), self.periods))

    @property
    def keys(self):
        return sorted({*self.kept, *self.found, *self.pulled})


def wants_of(problem, plan, *, extract_weeks, hauled):
    """`hauled`: codes of the parts that travel; any other is a token or stays in the shed."""
    shape = len(problem.scenarios), problem.periods
    kept: dict = defaultdict(lambda: np.zeros(shape))
    found: dict = defaultdict(lambda: np.zeros(shape))
    pulled: dict = defaultdict(lambda: np.zeros(shape))
    asked: dict = defaultdict(lambda: np.zeros(shape))
    solved = {scenario.code: scenario for scenario in plan.scenarios}
    shed = problem.locations[0]
    for number, scenario in enumerate(problem.scenarios):
        served = {line.use: line.units for line in solved[scenario.code].served}
        for use, units in _standing(scenario.uses, served):
            if use.location == shed:
                continue
            until = _off(use, extract_weeks)
            for part, pieces in use.keeps.items():
                if part in hauled:
                    key = use.location, part
                    kept[key][number, use.first : until] += pieces * units
                    if is_super(use):
                        pulled[key][number, until] += pieces * units
            for part, pieces in use.spends.items():
                if part in hauled:
                    kept[use.location, part][number, use.first :] += pieces * units
        _ask(asked, number, scenario.uses, shed, extract_weeks, hauled)
        for arrival in scenario.arrivals:
            if arrival.location != shed and arrival.part in hauled:
                found[arrival.location, arrival.part][number, arrival.period :] += arrival.quantity
    weights = np.array([scenario.probability for scenario in problem.scenarios])
    return Wants(
        weights=weights / weights.sum(),
        periods=problem.periods,
        kept=dict(kept),
        found=dict(found),
        pulled=dict(pulled),
        asked=dict(asked),
    )


def _ask(asked, number, uses, shed, extract_weeks, hauled):
    for use, units in _standing(uses, {use.code: use.units for use in uses}):
        if use.location != shed:
            for part, pieces in use.keeps.items():
                if part in hauled:
                    asked[use.location, part][number, use.first : _off(use, extract_weeks)] += pieces * units
            for part, pieces in use.spends.items():
                if part in hauled:
                    asked[use.location, part][number, use.first :] += pieces * units


def is_super(use):
    return use.code.startswith((SUPER, LEFT_ON))


def _standing(uses, served):
    """(use, units) as they stand at the yard: a super left on to the end is one stay, not two."""
    left_on = {use.needs_use: use for use in uses if use.code.startswith(LEFT_ON)}
    for use in uses:
        units = served.get(use.code, 0.0)
        if units <= 1e-9 or use.code.startswith(LEFT_ON):
            continue
        longer = left_on.get(use.code)
        stays = min(units, served.get(longer.code, 0.0)) if longer else 0.0
        if units - stays > 1e-9:
            yield use, units - stays
        if stays > 1e-9:
            yield _joined(use, longer), stays


def _joined(use, longer):
    return type(use)(
        code=use.code,
        location=use.location,
        first=use.first,
        last=longer.last,
        units=use.units,
        value=use.value,
        keeps=use.keeps,
    )


def _off(use, extract_weeks):
    """The period in which the pieces leave the colonies: pulled so long before they are extracted."""
    if is_super(use):
        return max(use.first, use.last - max(1, extract_weeks) + 1)
    return use.last + 1
