"""The questions: what lies where, what is owned, what is owed. Each takes `as_of` (None: by all of the books).

Gives plain mappings and rows, summed in SQL. The present comes from Holding, a past evening from the movements.
"""

from dataclasses import dataclass

from django.db.models import Q, Sum

from apiary.colonies import yards_on
from apiary.models import Colony, Yard
from inventory.gear import Condition, Gear
from inventory.locations import location_of
from inventory.models import Act, Holding, Location, Movement, Part
from inventory.orders import OwedRow, owed_everywhere, owed_lines

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
    return _as_gear(_sums({"": location_of(location).pk}, as_of))


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
    sums = _sums({}, as_of, ("yard_id", "colony_id"))
    stood = yards_on(as_of)
    here: dict[tuple, int] = {}
    for (store, colony, part, condition), quantity in sums.items():
        if (store or stood.get(colony)) == yard.pk:
            here[part, condition] = here.get((part, condition), 0) + quantity
    return _as_gear(here)


def owned(*, as_of=None):
    """{Gear: pieces} in all stores and on all colonies."""
    return _as_gear(_sums({}, as_of))


def on_colonies(*, as_of=None):
    """{colony's id: {Gear: pieces}} of every colony that holds gear."""
    sums = _sums({"__kind": Location.Kind.COLONY}, as_of, ("colony_id",))
    result: dict[int, dict[Gear, int]] = {}
    for (colony, part, condition), quantity in sorted(sums.items()):
        result.setdefault(colony, {})[Gear(part=part, condition=Condition(condition))] = quantity
    return result


def by_place(*, as_of=None):
    """StockRows, part by place by condition: a yard's store, and the colonies of a yard together."""
    sums = _sums({}, as_of, ("yard_id", "colony_id"))
    stood = yards_on(as_of)
    totals: dict[tuple, int] = {}
    for (store, colony, part, condition), quantity in sums.items():
        key = (part, store or stood.get(colony), colony is not None, condition)
        totals[key] = totals.get(key, 0) + quantity
    return _stock_rows(totals)


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
        for (code, yard, on_bees, condition), quantity in totals.items()
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


def _sums(where, as_of, also=()):
    """{(*also, part's code, condition): pieces} inside, not zero. `where` and `also` are fields of Location."""
    if as_of is None:
        return _totals([(Holding.objects.filter(quantity__gt=0), "location", 1)], where, also)
    moved = Movement.objects.filter(day__lte=as_of)
    return _totals([(moved, "target", 1), (moved, "source", -1)], where, also)


def _totals(rows_by_end, where, also):
    totals: dict[tuple, int] = {}
    for rows, end, sign in rows_by_end:
        chosen = rows.filter(**{f"{end}__kind__in": Location.INSIDE})
        chosen = chosen.filter(**{f"{end}{field}": value for field, value in where.items()})
        keys = [*(f"{end}__{field}" for field in also), "part__code", "condition"]
        for *key, total in chosen.order_by().values_list(*keys).annotate(total=Sum("quantity")):
            totals[tuple(key)] = totals.get(tuple(key), 0) + sign * total
    return {key: total for key, total in totals.items() if total}


def _as_gear(sums):
    return {
        Gear(part=part, condition=Condition(condition)): quantity
        for (part, condition), quantity in sorted(sums.items())
    }
