"""The questions: what lies where, what is owned, what is owed. Each takes `as_of` (None: by all of the books).

Gives plain mappings and rows. The present comes from Holding, a past evening from the nearest evening kept.
"""

from typing import NamedTuple

from django.db.models import Q, Sum

from apiary.colonies import yards_on
from apiary.models import Colony, Yard
from inventory.gear import Condition, Gear
from inventory.ledger.evenings import balances_on, present
from inventory.locations import location_of
from inventory.models import Act, Location, Movement, Part
from inventory.orders import OwedRow, owed_everywhere, owed_lines
from inventory.standstill import standing_still

__all__ = [
    "OwedRow",
    "StockRow",
    "by_place",
    "ended_with_gear",
    "found_gear",
    "history",
    "in_yard",
    "on_colonies",
    "on_colony",
    "on_hand",
    "owed",
    "owed_by_part",
    "owned",
]


HERE = "here"  # the one ground of a question about one
CONDITIONS = {condition.value: condition for condition in Condition}
FEW = 100  # places that are asked for by name; of more all are read


class StockRow(NamedTuple):
    """Pieces of one gear in a yard's store, or on the colonies of a yard together. Value at list price."""

    part: str
    name: str
    kind: str
    yard: str
    yard_name: str
    on_colonies: bool
    condition: Condition
    quantity: int
    value_cents: int


def on_hand(location, *, as_of=None):
    """{Gear: pieces} at a store or colony (a yard stands for its store), by part; nothing that is zero."""
    return _as_gear(_sums({location_of(location).pk: HERE}, as_of))


def on_colony(colony, *, as_of=None):
    """{Gear: pieces} that the book has on a colony."""
    return on_hand(colony, as_of=as_of)


def ended_with_gear(*, on):
    """Colonies that are no more by the day and still have gear booked on them, each with its `pieces`, by yard."""
    pieces = Sum("place__holdings__quantity", filter=Q(place__holdings__quantity__gt=0))
    ended = Colony.objects.filter(ended_on__lte=on).select_related("yard")
    return ended.annotate(pieces=pieces).filter(pieces__gt=0).order_by("yard__name", "tag")


def in_yard(yard, *, as_of=None):
    """{Gear: pieces} in a yard: its store and all colonies that stood there."""
    here = {location: HERE for location, (code, _) in _yards(as_of).items() if code == yard.pk}
    return _as_gear(_sums(here, as_of))


def owned(*, as_of=None):
    """{Gear: pieces} in all stores and on all colonies."""
    inside = Location.objects.filter(kind__in=Location.INSIDE).values_list("pk", flat=True)
    return _as_gear(_sums(dict.fromkeys(inside, HERE), as_of))


def on_colonies(*, as_of=None):
    """{colony's id: {Gear: pieces}} of every colony that holds gear."""
    places = Location.objects.filter(kind=Location.Kind.COLONY).values_list("pk", "colony_id")
    sums = _sums(dict(places), as_of)
    return {colony: _as_gear(sums, colony) for colony in sorted(sums)}


def by_place(*, as_of=None):
    """StockRows, part by place by condition: a yard's store, and the colonies of a yard together."""
    return _stock_rows(_sums(_yards(as_of), as_of))


def _yards(as_of):
    """{location's id: (yard's id, whether it is a colony)} of stores and colonies, where they stood that evening."""
    stood = yards_on(as_of)
    inside = Location.objects.filter(kind__in=Location.INSIDE).values_list("pk", "yard_id", "colony_id")
    return {location: (yard or stood.get(colony), colony is not None) for location, yard, colony in inside}


def _stock_rows(sums):
    """One row for each sum, by part, yard, store before colonies, condition."""
    parts, yards = Part.objects.in_bulk(field_name="code"), Yard.objects.in_bulk()
    grounds = sorted((yards[yard].code, on_bees, yards[yard].name, (yard, on_bees)) for yard, on_bees in sums)
    gears = {gear for totals in sums.values() for gear in totals}
    rows = []
    for code in sorted({gear[0] for gear in gears}):
        part, how = parts[code], sorted(gear for gear in gears if gear[0] == code)
        name, kind, price = part.name, part.kind, part.list_price_cents
        for yard, on_bees, yard_name, ground in grounds:
            totals = sums[ground]
            for gear in how:
                pieces = totals.get(gear)
                if pieces:
                    condition = CONDITIONS[gear[1]]
                    row = (code, name, kind, yard, yard_name, on_bees, condition, pieces, pieces * price)
                    rows.append(StockRow._make(row))
    return rows


def owed(order=None, *, as_of=None):
    """OwedRows: of one order every line, of all open orders those lines of which something is still to come.

    A line closed since, or opened again, counts from its day on.
    """
    return owed_everywhere(as_of=as_of) if order is None else owed_lines(order, as_of=as_of)


def owed_by_part(*, as_of=None):
    """{part's code: pieces still to come}."""
    totals: dict[str, int] = {}
    for row in owed(as_of=as_of):
        totals[row.part.code] = totals.get(row.part.code, 0) + row.owed
    return totals


def history(part=None, *, location=None, as_of=None):
    """The movements of a part or at a place up to a day, newest first, with all that a page shows."""
    rows = Movement.objects.select_related(
        "act__who",
        "act__reverses",
        "part",
        "source__yard",
        "source__colony",
        "target__yard",
        "target__colony",
    )
    if part is not None:
        rows = rows.filter(part=part)
    if location is not None:
        place = location_of(location)
        rows = rows.filter(Q(source=place) | Q(target=place))
    if as_of is not None:
        rows = rows.filter(day__lte=as_of)
    return rows.order_by("-day", "-id")


def found_gear(*, as_of=None):
    """Movements that booked gear found beyond the book, of acts that were not reversed, newest first."""
    undone = Act.objects.filter(reversed_by__isnull=False)
    rows = history(as_of=as_of).filter(found=True, act__reverses__isnull=True)
    return rows.exclude(act__in=undone)


def _sums(grounds, as_of):
    """{ground: {(part's code, condition): pieces}}; `grounds` are {location's id: ground}, others do not count."""
    by_ground: dict = {}
    for location, gears in _balances(grounds, as_of).items():
        ground = grounds.get(location)
        if ground is None:
            continue
        totals = by_ground.setdefault(ground, {})
        for gear, quantity in gears.items():
            totals[gear] = totals.get(gear, 0) + quantity
    named = _named({gear for totals in by_ground.values() for gear in totals})
    return {
        ground: {named[gear]: quantity for gear, quantity in totals.items()}
        for ground, totals in by_ground.items()
    }


def _balances(grounds, as_of):
    if not grounds:
        return {}
    if as_of is None:
        return present(grounds if len(grounds) <= FEW else None)
    with standing_still():
        return balances_on(as_of)


def _named(gears):
    """{gear as balances name it: (part's code, condition)}."""
    codes = {str(pk): code for pk, code in Part.objects.values_list("pk", "code")}
    parted = {gear: gear.partition(" ") for gear in gears}
    return {gear: (codes[part], condition) for gear, (part, _, condition) in parted.items()}


def _as_gear(sums, ground=HERE):
    return {
        Gear(part=part, condition=CONDITIONS[condition]): quantity
        for (part, condition), quantity in sorted(sums.get(ground, {}).items())
    }
