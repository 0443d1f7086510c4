"""The questions: what lies where, what is owned, what is owed. Each takes `as_of` (None: by all of the books).

Gives plain mappings and rows. The present comes from Holding, a past evening from the nearest evening kept.
"""

from dataclasses import dataclass

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


FEW = 100  # places that are asked for by name; of more all are read


@dataclass(frozen=True, kw_only=True)
class StockRow:
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
    return _as_gear(_sums({location_of(location).pk: "here"}, as_of))


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
    here = {location: "here" for location, (code, _) in _yards(as_of).items() if code == yard.pk}
    return _as_gear(_sums(here, as_of))


def owned(*, as_of=None):
    """{Gear: pieces} in all stores and on all colonies."""
    inside = Location.objects.filter(kind__in=Location.INSIDE).values_list("pk", flat=True)
    return _as_gear(_sums(dict.fromkeys(inside, "inside"), as_of))


def on_colonies(*, as_of=None):
    """{colony's id: {Gear: pieces}} of every colony that holds gear."""
    places = Location.objects.filter(kind=Location.Kind.COLONY).values_list("pk", "colony_id")
    result: dict[int, dict[Gear, int]] = {}
    for (colony, part, condition), quantity in sorted(_sums(dict(places), as_of).items()):
        result.setdefault(colony, {})[Gear(part=part, condition=Condition(condition))] = quantity
    return result


def by_place(*, as_of=None):
    """StockRows, part by place by condition: a yard's store, and the colonies of a yard together."""
    return _stock_rows(_sums(_yards(as_of), as_of))


def _yards(as_of):
    """{location's id: (yard's id, whether it is a colony)} of stores and colonies, where they stood that evening."""
    stood = yards_on(as_of)
    inside = Location.objects.filter(kind__in=Location.INSIDE).values_list("pk", "yard_id", "colony_id")
    return {location: (yard or stood.get(colony), colony is not None) for location, yard, colony in inside}


def _stock_rows(totals):
    parts, yards = Part.objects.in_bulk(field_name="code"), Yard.objects.in_bulk()
    rows = [
        StockRow(
            part=code,
            name=parts[code].name,
            kind=parts[code].kind,
            yard=yards[yard].code,
            yard_name=yards[yard].name,
            on_colonies=on_bees,
            condition=Condition(condition),
            quantity=quantity,
            value_cents=quantity * parts[code].list_price_cents,
        )
        for ((yard, on_bees), code, condition), quantity in totals.items()
    ]
    return sorted(rows, key=lambda row: (row.part, row.yard, row.on_colonies, row.condition))


def owed(order=None, *, as_of=None):
    """OwedRows: of one order every line, of all open orders those lines of which something is still to come.

    An order cancelled since counts as cancelled on every day.
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
    """{(ground, part's code, condition): pieces}; `grounds` are {location's id: ground}, others do not count."""
    codes = {str(pk): code for pk, code in Part.objects.values_list("pk", "code")}
    balances = _balances(grounds, as_of)
    by_ground: dict = {}
    for location, gears in balances.items():
        ground = grounds.get(location)
        if ground is None:
            continue
        totals = by_ground.setdefault(ground, {})
        for gear, quantity in gears.items():
            totals[gear] = totals.get(gear, 0) + quantity
    return {
        (ground, *_part_and_condition(gear, codes)): quantity
        for ground, totals in by_ground.items()
        for gear, quantity in totals.items()
    }


def _balances(grounds, as_of):
    if as_of is None:
        return present(grounds if len(grounds) <= FEW else None)
    with standing_still():
        return balances_on(as_of)


def _part_and_condition(gear, codes):
    part, _, condition = gear.partition(" ")
    return codes[part], condition


def _as_gear(sums):
    return {
        Gear(part=part, condition=Condition(condition)): quantity
        for (_, part, condition), quantity in sorted(sums.items())
    }
