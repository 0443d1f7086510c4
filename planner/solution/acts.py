"""Reads what is done off the columns' values: packs, uses served, runs by period, gear hauled.

Takes a Programme and its values; gives Acts, whole packs rounded, merged periods told apart again. Adds up no money.
"""

import math
from dataclasses import dataclass, field

DUST = 1e-9


@dataclass(kw_only=True)
class ScenarioActs:
    packs: dict = field(default_factory=dict)  # (offer, period) -> packs
    served: dict = field(default_factory=dict)  # use -> units
    made: dict = field(default_factory=dict)  # (recipe, period) -> runs begun
    hauled: dict = field(default_factory=dict)  # (line, part, period) -> units


@dataclass(kw_only=True)
class Acts:
    packs: dict = field(default_factory=dict)  # here-and-now: (offer, period) -> packs
    scenarios: list = field(default_factory=list)


def acts_of(programme, values, packs=None):
    """Acts of the columns' values, `values` a dict by column; `packs` the here-and-now order where it has none."""
    acts = Acts(packs=dict(packs or {}), scenarios=[ScenarioActs() for _ in programme.problem.scenarios])
    for order in programme.orders:
        packs = clean(sum(_at(values, column) * share for column, share in order.packs.items()))
        packs = round(packs) if order.offer.is_whole else packs
        if packs > DUST:
            owner = acts if order.scenario is None else acts.scenarios[order.scenario]
            owner.packs[order.offer.code, order.period] = packs
    for row in programme.served:
        _serve(row, values, acts.scenarios[row.scenario].served, whole=programme.problem.whole_uses)
    for row in programme.hauled:
        units = clean(_at(values, row.column))
        if units > DUST:
            acts.scenarios[row.scenario].hauled[row.line, row.part, row.period] = units
    _spread_runs(programme, values, acts)
    return acts


def _at(values, column):
    """The column's value; one that no row and no money knows of stays at its least."""
    return values.get(column, column.lowBound or 0.0)


def clean(value):
    """A value without a solver's last digits."""
    near = round(value)
    if abs(value - near) < 1e-7:
        return float(near)
    return max(float(value), 0.0)


def _serve(row, values, served, *, whole):
    """Fills uses that share a column one after another; merged ones no further than what they wait for."""
    units = row.units or tuple(use.units for use in row.uses)
    left = row.share * sum(units) if row.column is None else clean(_at(values, row.column))
    left = round(left) if whole else left
    share = _share(row, values) if row.alike else 1.0 if row.on is None else _share(row.on, values)
    for use, most in zip(row.uses, units, strict=True):
        given = most * share if row.alike else min(left, most * share)
        if use.units - given < DUST:
            given = use.units
        served[use.code] = given
        left = max(left - given, 0.0)


def _share(row, values):
    """The share of their units to which merged uses are served."""
    total = sum(row.units)
    return min(clean(_at(values, row.column)) / total, 1.0) if total else 0.0


def _spread_runs(programme, values, acts):
    """Runs counted at their last period are told apart again: begun as early as the minutes allow, those due first
    first, those due alike by equal share."""
    due: dict[tuple, list] = {}
    for run in programme.runs:
        runs = clean(_at(values, run.column))
        if runs > DUST and run.first == run.last:
            acts.scenarios[run.scenario].made[run.recipe.code, run.first] = runs
        elif runs > DUST:
            due.setdefault((run.scenario, run.first, run.last), []).append((run.recipe, runs))
    free = {scenario: _free_minutes(programme.problem, acts, scenario) for scenario, _, _ in due}
    begun: dict[tuple, int] = {}  # by segment: where the runs due before ended
    for scenario, first, last in sorted(due):
        found = due[scenario, first, last]
        total = sum(recipe.work_minutes * runs for recipe, runs in found)
        shares = _shares(free[scenario], total, begun.get((scenario, first), first), last)
        begun[scenario, first] = shares[-1][0]
        made = acts.scenarios[scenario].made
        for recipe, runs in found:
            for period, share in shares:
                made[recipe.code, period] = made.get((recipe.code, period), 0.0) + runs * share


def _free_minutes(problem, acts, scenario):
    """Minutes of each period that packs landing and runs already placed leave free."""
    limits = problem.work.minutes_per_period
    if limits is None:
        return None
    free, own = list(limits), acts.scenarios[scenario]
    offers = {offer.code: offer for offer in problem.offers}
    for packs in (acts.packs, own.packs):
        for (code, period), count in packs.items():
            free[period + offers[code].lead_periods] -= count * offers[code].work_minutes
    minutes = {recipe.code: recipe.work_minutes for recipe in problem.recipes}
    for (code, period), runs in own.made.items():
        free[period] -= runs * minutes[code]
    return free


def _shares(free, total, first, last):
    """(period, share) of runs that take `total` minutes; takes them off the free ones."""
    if not total or free is None:
        return [(first, 1.0)]
    left, shares = total, []
    for period in range(first, last + 1):
        taken = left if period == last else min(left, max(free[period], 0.0))
        free[period] -= taken
        left -= taken
        if taken > DUST * total:
            shares.append((period, taken / total))
        if left <= DUST * total:
            break
    return shares


def ceil_trips(weight, trip_lb):
    """Whole trips that carry a weight."""
    return math.ceil(weight / trip_lb - 1e-7)
