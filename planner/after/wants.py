"""What each season keeps at each yard week by week, what comes free there, and the supers pulled.

Takes a sizing problem, its plan, and the weeks a super takes to be extracted; gives arrays (scenario × period) by yard
and part. A super is at its yard until it is pulled, and free again once extracted. Units are those the plan serves.
"""

from collections import defaultdict
from dataclasses import dataclass, replace

import numpy as np

from planner.plan.needs import chances

SUPER, LEFT_ON = "super/", "left-on/"
TABLES = ("kept", "found", "pulled", "asked")
TINY = 1e-9


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
    tables: dict = {name: defaultdict(lambda: np.zeros(shape)) for name in TABLES}
    kept, found, pulled, asked = (tables[name] for name in TABLES)
    solved = {scenario.code: scenario for scenario in plan.scenarios}
    shed = problem.locations[0]
    for number, scenario in enumerate(problem.scenarios):
        served = {line.use: line.units for line in solved[scenario.code].served}
        for use, units in _at_yards(scenario.uses, served, shed):
            off = _off(use, extract_weeks)
            _hold(kept, number, use, units, off)
            for part, pieces in use.keeps.items() if is_super(use) else ():
                pulled[use.location, part][number, off] += pieces * units
        for use, units in _at_yards(scenario.uses, {use.code: use.units for use in scenario.uses}, shed):
            _hold(asked, number, use, units, _off(use, extract_weeks))
        for arrival in scenario.arrivals:
            if arrival.location != shed:
                found[arrival.location, arrival.part][number, arrival.period :] += arrival.quantity
    return Wants(
        weights=chances(problem.scenarios),
        periods=problem.periods,
        **{
            name: {key: rows for key, rows in table.items() if key[1] in hauled}
            for name, table in tables.items()
        },
    )


def _hold(table, number, use, units, off):
    """What the use keeps from its first week until it is taken off, what it spends to the end."""
    for part, pieces in use.keeps.items():
        table[use.location, part][number, use.first : off] += pieces * units
    for part, pieces in use.spends.items():
        table[use.location, part][number, use.first :] += pieces * units


def is_super(use):
    return use.code.startswith((SUPER, LEFT_ON))


def _at_yards(uses, served, shed):
    """(use, units) as they stand at the yards: a super left on to the end is one stay, not two."""
    left_on = {use.needs_use: use for use in uses if use.code.startswith(LEFT_ON)}
    for use in uses:
        units = served.get(use.code, 0.0)
        if units <= TINY or use.location == shed or use.code.startswith(LEFT_ON):
            continue
        longer = left_on.get(use.code)
        stays = min(units, served.get(longer.code, 0.0)) if longer else 0.0
        if units - stays > TINY:
            yield use, units - stays
        if longer and stays > TINY:
            yield replace(use, last=longer.last), stays


def _off(use, extract_weeks):
    """The period in which the pieces leave the colonies: pulled so long before they are extracted."""
    if is_super(use):
        return max(use.first, use.last - max(1, extract_weeks) + 1)
    return use.last + 1
