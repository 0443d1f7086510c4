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


def acts_of(programme, values):
    """Acts of the columns' values, `values` a dict by column."""
    acts = Acts(scenarios=[ScenarioActs() for _ in programme.problem.scenarios])
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
    """Fills uses that share a column one after another."""
    left = (
        row.share * sum(use.units for use in row.uses)
        if row.column is None
        else clean(_at(values, row.column))
    )
    left = round(left) if whole else left
    for use in row.uses:
        units = min(left, use.units)
        if use.units - units < DUST:
            units = use.units
        served[use.code] = units
        left = max(left - units, 0.0)


def _spread_runs(programme, values, acts):
    """Runs of a stretch go to its periods as early as the minutes allow, all recipes alike by share."""
    stretches: dict[tuple, list] = {}
    for run in programme.runs:
        runs = clean(_at(values, run.column))
        if runs > DUST and run.first == run.last:
            acts.scenarios[run.scenario].made[run.recipe.code, run.first] = runs
        elif runs > DUST:
            stretches.setdefault((run.scenario, run.first, run.last), []).append((run.recipe, runs))
    for (scenario, first, last), begun in stretches.items():
        made = acts.scenarios[scenario].made
        shares = _shares(programme.problem, made, first, last, begun)
        for recipe, runs in begun:
            for period, share in shares:
                made[recipe.code, period] = runs * share


def _shares(problem, made, first, last, begun):
    """(period, share) of a stretch's runs: each period's free minutes until all is done."""
    total = sum(recipe.work_minutes * runs for recipe, runs in begun)
    limits = problem.work.minutes_per_period
    if not total or limits is None:
        return [(first, 1.0)]
    minutes = {recipe.code: recipe.work_minutes for recipe in problem.recipes}
    left, shares = 1.0, []
    for period in range(first, last + 1):
        taken = sum(n * minutes[code] for (code, begun_at), n in made.items() if begun_at == period)
        share = min(left, max(limits[period] - taken, 0.0) / total)
        if share > DUST or (period == last and left > DUST):
            shares.append((period, left if period == last and left - share < 1e-6 else share))
        left = max(left - share, 0.0)
        if left <= DUST:
            break
    return shares or [(first, 1.0)]


def ceil_trips(weight, trip_lb):
    """Whole trips that carry a weight."""
    return math.ceil(weight / trip_lb - 1e-7)
