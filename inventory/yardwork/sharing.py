"""Gear told as a sum over several hives, shared out among them by what the book has on each.

Takes places (colonies, a store) and Lines; gives which place gives how many. What the book does not have is taken
from one of them: the act books it there as found. Writes nothing.
"""

from inventory.deadouts.holds import open_cases
from inventory.deadouts.refusals import UnderCase
from inventory.errors import HeldBack
from inventory.gear import Condition
from inventory.ledger.balances import balances_from
from inventory.ledger.lines import Line
from inventory.ledger.posting import Entry
from inventory.models import Holding, Part
from inventory.yardwork.refusals import WorkedLater


def booked_at(places, day):
    """{place: {(part, condition): pieces}}: what can be taken from each on the day and is not gone on a later one."""
    holdings = Holding.objects.filter(location__in=places)
    keys = set(holdings.values_list("location_id", "part_id", "condition"))
    by_id = {place.pk: place for place in places}
    parts = Part.objects.in_bulk({part for _, part, _ in keys})
    wanted = {(by_id[place], parts[part], Condition(condition)) for place, part, condition in keys}
    booked: dict = {place: {} for place in places}
    for (place, part, condition), balances in sorted(balances_from(day, wanted).items(), key=_by_name):
        pieces = min(balance for _, balance in balances)
        if pieces > 0:
            booked[place][part, condition] = pieces
    return booked


def taken(lines, booked, *, beyond):
    """[(place, Line)]: each line from the places in their order, what the book lacks from the place `beyond`.

    `booked` is left with what was not taken.
    """
    shares = []
    for line in lines:
        still = line.quantity
        for place, pieces in booked.items():
            part = min(still, pieces.get((line.part, line.condition), 0))
            if part:
                pieces[line.part, line.condition] -= part
                shares.append((place, Line(line.part, part, line.condition)))
                still -= part
        if still:
            shares.append((beyond, Line(line.part, still, line.condition)))
    return shares


def rest(booked):
    """[(place, Line)] of all that is left there."""
    return [
        (place, Line(part, number, condition))
        for place, pieces in booked.items()
        for (part, condition), number in pieces.items()
        if number
    ]


def carried(shares, target, reason):
    """An entry for each share, to one target."""
    return [
        Entry(
            part=line.part,
            quantity=line.quantity,
            condition=line.condition,
            source=place,
            target=target,
            reason=reason,
        )
        for place, line in shares
    ]


def suspected(places, act):
    """A refusal for each hive with gear held back on it or under an open case: its bees and combs carry it on."""
    yield from under_case(places, act)
    held = Holding.objects.filter(location__in=places, condition=Condition.HELD, quantity__gt=0)
    for holding in held.select_related("part", "location__colony").order_by("location", "part__code"):
        yield HeldBack(part=holding.part, act=act, location=holding.location.colony)


def under_case(places, act):
    """A refusal for each hive that an open case of foulbrood reaches, whatever stands on it now."""
    cases = open_cases(places)
    for place in places:
        if place.pk in cases:
            yield UnderCase(colony=place.colony, act=act, why=cases[place.pk].why)


def worked_later(places, day, act):
    """A refusal for each colony whose gear was moved after the day by an act that stands."""
    for place in places:
        rows = place.given.all() | place.taken.all()
        standing = rows.filter(day__gt=day, act__reverses__isnull=True, act__reversed_by__isnull=True)
        last = standing.order_by("day").last()
        if last is not None:
            yield WorkedLater(colony=place.colony, act=act, day=day, later_day=last.day)


def _by_name(item):
    (place, part, condition), _balances = item
    return place.pk, part.code, condition
