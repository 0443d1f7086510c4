"""Uses of one scenario: what may be served, what must be, and what waits for another use.

Takes a scenario's uses; adds their columns, their gear and rows of the families use_limit, must_use, whole_uses
and needs_use. Uses alike in all but their code share a column; given a Merging, so do its groups.
"""

from planner.programme.draft import mark
from planner.programme.record import Served


def place_uses(draft, gear, scenario, merging=None):
    """Columns of all uses of a scenario, with the gear they keep and spend. Gives the (column, row name of its link)
    of each group of the Merging."""
    uses, groups = draft.problem.scenarios[scenario].uses, []
    if merging is not None:
        groups, merged = _place_groups(draft, gear, scenario, merging), merging.codes
        uses = [use for use in uses if use.code not in merged]
    _place_each(draft, gear, scenario, uses)
    return groups


def _place_groups(draft, gear, scenario, merging):
    """A column a group, worth the mean of its uses."""
    groups, columns, placed = list(merging.groups()), [], []
    for group in groups:
        use = group.uses[0]
        columns.append(draft.column("use", mark(scenario), use.code, highest=sum(group.units)))
        _count(draft, gear, scenario, use, columns[-1], value=group.value)
    for group, column in zip(groups, columns, strict=True):
        on = None if group.on is None else columns[group.on]
        row = None if on is None else needs_use(draft, scenario, group.uses[0], column, on, group.per)
        placed.append((column, row))
    draft.programme.served.extend(served_by(merging, scenario, columns))
    return placed


def served_by(merging, scenario, columns):
    """How the groups' columns serve their uses."""
    groups = list(merging.groups())
    found: dict[int, Served] = {}
    for number in merging.by_tiers():
        group = groups[number]
        found[number] = Served(
            scenario=scenario,
            uses=group.uses,
            column=columns[number],
            units=group.units,
            on=None if group.on is None else found[group.on],
            alike=group.is_waited_for,
        )
    return list(found.values())


def _place_each(draft, gear, scenario, uses):
    linked = {use.needs_use for use in uses if use.needs_use} | {use.code for use in uses if use.needs_use}
    columns: dict = {}
    alike: dict[tuple, list] = {}
    for use in uses:
        if use.code in linked:
            columns[use.code] = use_limit(draft, scenario, (use,))
        elif use.must and draft.ease != "musts":
            alike.setdefault((True, *_kind(draft, use, valued=False)), []).append(use)
        else:
            alike.setdefault((False, use.must, *_kind(draft, use)), []).append(use)
    for (must, *_), group in alike.items():
        if must:
            must_use(draft, gear, scenario, tuple(group))
        else:
            column = use_limit(draft, scenario, tuple(group))
            _count(draft, gear, scenario, group[0], column, value=group[0].value)
    for use in uses:
        if use.code in linked:
            _count(draft, gear, scenario, use, columns[use.code], value=use.value)
            if use.needs_use:
                needs_use(draft, scenario, use, columns[use.code], columns[use.needs_use], use.per)


def _kind(draft, use, *, valued=True):
    """What makes uses alike; halves of two uses are never one whole."""
    alone = use.code if draft.problem.whole_uses and use.units % 1 else None
    location = use.location if draft.problem.hauls else None
    keeps, spends = (tuple(sorted(parts.items())) for parts in (use.keeps, use.spends))
    return location, use.first, use.last, keeps, spends, use.value if valued else None, alone


def use_limit(draft, scenario, uses):
    """Limit of a use: 0 ≤ served ≤ units; of a must-use with a link served = units.

    Its price is what one unit more of the use would earn with the gear at hand.
    """
    units = sum(use.units for use in uses)
    must = uses[0].must
    hard = must and draft.ease != "musts"
    column = draft.column(
        "use",
        mark(scenario),
        uses[0].code,
        lowest=units if hard else 0,
        highest=units,
        whole=whole_uses(draft.problem),
    )
    if must and not hard:
        draft.penalties[column] = 1.0
    draft.programme.served.append(Served(scenario=scenario, uses=uses, column=column))
    return column


def whole_uses(problem):
    """Whole uses: served is a whole number.

    Has no price: half a use is no use.
    """
    return problem.whole_uses


def must_use(draft, gear, scenario, uses):
    """Must-use: served = units; what it keeps and spends stands on the right side of the balance rows.

    Its price is the sum of those rows' prices over what it keeps and spends: what dropping one unit would save.
    """
    draft.programme.served.append(Served(scenario=scenario, uses=uses, column=None, share=1.0))
    for use in uses:
        draft.constants[scenario] += use.units * (use.value + _worth(draft, use))
        for part, period, n in _moves(use):
            gear.count_fixed(use.location, part, period, n * use.units)


def _count(draft, gear, scenario, use, column, *, value):
    for part, period, n in _moves(use):
        value += n * draft.worth[part][period]
        gear.count(use.location, part, period, column, n)
    draft.money(scenario, {column: value})


def _moves(use):
    """What one unit served takes and gives back: (part, period, units)."""
    for part, kept in use.keeps.items():
        yield part, use.first, -kept
        yield part, use.last + 1, kept
    for part, spent in use.spends.items():
        yield part, use.first, -spent


def _worth(draft, use):
    """End value and holding cost that serving one unit changes; what is kept past the last period keeps its value."""
    worth = 0.0
    for part, period, n in _moves(use):
        worth += n * draft.worth[part][period]
    return worth


def needs_use(draft, scenario, use, column, other, per):
    """Link between uses: served of this use ≤ per × served of the other. Gives the row's name.

    Its price is what one unit more of this use would earn if the other did not hold it back.
    """
    terms = {column: 1.0, other: -per}
    slack = draft.slack("needs_use", scenario, use.code, weight=1 / max(1.0, use.units))
    if slack is not None:
        terms[slack] = -1.0
    return draft.row("needs_use", mark(scenario), use.code, terms=terms, sense="<=", bound=0)
