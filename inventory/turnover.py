"""Opening + in − out = closing: what a place or a part did between two days.

Takes a place or part with the first and last day; gives TurnoverRows. Opening and closing are asked of the stock,
in and out of the movements: that they agree is a check, not an assumption.
"""

import datetime as dt
from dataclasses import dataclass

from django.db.models import Q, Sum

from inventory.gear import Condition, Gear
from inventory.locations import location_of
from inventory.models import Location, Movement, Part
from inventory.pieces import Row as PieceRow
from inventory.pieces import order_of
from inventory.stock import by_place, on_hand

ONE_DAY = dt.timedelta(days=1)


@dataclass(frozen=True, kw_only=True)
class TurnoverRow:
    """One gear at a place, or one place of a part."""

    name: str
    condition: Condition
    opening: int
    came: int
    went: int
    closing: int
    address: str = ""  # the code of the part or yard, for its page

    @property
    def agrees(self):
        return self.opening + self.came - self.went == self.closing


def of_place(ground, *, since, until):
    """Rows of a store or colony, a gear each, in the order in which a hive is built."""
    here = location_of(ground)
    opening, closing = on_hand(here, as_of=since - ONE_DAY), on_hand(here, as_of=until)
    came, went = (_moved({end: here}, since, until) for end in ("target", "source"))
    parts = Part.objects.in_bulk(field_name="code")
    rows = [
        PieceRow(part=parts[gear.part], condition=gear.condition)
        for gear in {*opening, *closing, *came, *went}
    ]
    return [
        TurnoverRow(
            name=row.name,
            condition=row.condition,
            opening=opening.get(gear, 0),
            came=came.get(gear, 0),
            went=went.get(gear, 0),
            closing=closing.get(gear, 0),
            address=row.part.code,
        )
        for row in sorted(rows, key=order_of)
        for gear in [Gear(part=row.part.code, condition=row.condition)]
    ]


def _moved(where, since, until):
    rows = Movement.objects.filter(day__gte=since, day__lte=until, **where).order_by()
    sums = rows.values_list("part__code", "condition").annotate(total=Sum("quantity"))
    return {Gear(part=part, condition=Condition(condition)): total for part, condition, total in sums}


def of_part(part, *, since, until):
    """Rows of a part, all conditions together: a store each, all hives together, and last the whole outfit."""
    opening, closing = _by_ground(part, since - ONE_DAY), _by_ground(part, until)
    came, went = _flows(part, since, until)
    names = dict(
        Location.objects.filter(kind=Location.Kind.STORE)
        .values_list("yard__code", "yard__name")
        .order_by("yard__name")
    )
    grounds = [code for code in names if any(code in sums for sums in (opening, closing, came, went))]
    rows = [_ground_row(code, f"{names[code]}, store", opening, came, went, closing) for code in grounds]
    if any(HIVES in sums for sums in (opening, closing, came, went)):
        rows.append(_ground_row(HIVES, "On hives", opening, came, went, closing))
    came, went = _outer_flows(part, since, until)
    whole = TurnoverRow(
        name="Whole outfit",
        condition=Condition.SOUND,
        opening=sum(opening.values()),
        came=came,
        went=went,
        closing=sum(closing.values()),
    )
    return rows, whole


HIVES = ""  # stands for all colonies together


def _ground_row(code, name, opening, came, went, closing):
    return TurnoverRow(
        name=name,
        condition=Condition.SOUND,
        opening=opening.get(code, 0),
        came=came.get(code, 0),
        went=went.get(code, 0),
        closing=closing.get(code, 0),
        address=code,
    )


def _by_ground(part, day):
    sums: dict[str, int] = {}
    for row in by_place(as_of=day):
        if row.part == part.code:
            code = HIVES if row.on_colonies else row.yard
            sums[code] = sums.get(code, 0) + row.quantity
    return sums


def _flows(part, since, until):
    """({ground: came}, {ground: went}); what went from hive to hive is in neither."""
    moved = Movement.objects.filter(part=part, day__gte=since, day__lte=until).order_by()
    between = Q(source__kind=Location.Kind.COLONY, target__kind=Location.Kind.COLONY)
    result = []
    for end in ("target", "source"):
        ends = moved.exclude(between).filter(**{f"{end}__kind__in": Location.INSIDE})
        sums: dict[str, int] = {}
        for code, total in ends.values_list(f"{end}__yard__code").annotate(total=Sum("quantity")):
            sums[code or HIVES] = total
        result.append(sums)
    return result


def _outer_flows(part, since, until):
    """What came into the outfit and what left it; moves inside are in neither."""
    moved = Movement.objects.filter(part=part, day__gte=since, day__lte=until)
    inside = {end: Q(**{f"{end}__kind__in": Location.INSIDE}) for end in ("source", "target")}
    came = moved.filter(inside["target"]).exclude(inside["source"])
    went = moved.filter(inside["source"]).exclude(inside["target"])
    return tuple(rows.aggregate(total=Sum("quantity"))["total"] or 0 for rows in (came, went))
