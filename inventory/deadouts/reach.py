"""What a suspicion of foulbrood in one hive reaches: its kin, its neighbours, its yard's store, pieces that were on it.

Takes the colony and the day it was found; looks 24 months back and up to now. Gives what is to be held back, each
with its reason, and what has left the outfit and can only be told of. Holds nothing itself: acts do.
"""

import calendar
from collections import defaultdict
from dataclasses import dataclass

from apiary.colonies import yard_on
from apiary.errors import told
from apiary.models import Colony
from inventory.deadouts.fates import HIVE_GEAR
from inventory.deadouts.stays import stays_until
from inventory.deadouts.tracing import Way, trace
from inventory.locations import place_of, store_of
from inventory.models import Hold, Holding, Location, Movement, Part

MONTHS_BACK = 24
GONE = (Location.Kind.SOLD, Location.Kind.LENT)


@dataclass(frozen=True, kw_only=True)
class Reached:
    """One place the suspicion reaches. `most` limits pieces by part; None means all hive gear that lies there."""

    location: Location
    head: str
    why: str
    reason: str = Hold.Reason.REACHED
    most: dict | None = None
    pieces: int = 0


@dataclass(frozen=True, kw_only=True)
class Gone:
    """What cannot be held back any more: whoever has it now is to be told."""

    head: str
    why: str


@dataclass(frozen=True, kw_only=True)
class Reach:
    held: tuple[Reached, ...]
    gone: tuple[Gone, ...]


def reach(colony, *, found_on):
    """All that a suspicion reaches, the gravest first: pieces that were on the hive, kin, neighbours, the store."""
    since = months_before(found_on)
    most, left = _traced(colony, since)
    hives, gone = _hives(colony, since, found_on)
    yard = yard_on(colony, found_on)
    store = Reached(location=store_of(yard), head=f"Store of {yard}", why=_in_yard(yard, colony, found_on))
    held = _counted([*_places(colony, most, since), *hives, store])
    return Reach(held=tuple(held), gone=(*gone, *_left(left, colony)))


def months_before(day, months=MONTHS_BACK):
    """The same day so many months earlier, or the last of its month."""
    year, month = divmod(day.year * 12 + day.month - 1 - months, 12)
    return day.replace(year=year, month=month + 1, day=min(day.day, calendar.monthrange(year, month + 1)[1]))


def _in_yard(yard, colony, day):
    return f"in {yard}, where foulbrood was suspected in {colony} on {told(day)}"


def _hives(colony, since, found_on):
    """(hives whose gear is held back, what was told of those that are gone)."""
    words = _neighbours(colony, since, found_on) | _kin(colony, since)
    words.pop(colony.pk, None)
    held, gone = [], []
    for other in Colony.objects.filter(pk__in=words).order_by("yard__name", "tag"):
        why = words[other.pk]
        if other.ended_why == Colony.Ended.SOLD:
            gone.append(Gone(head=f"{other}, sold on {told(other.ended_on)}", why=why))
        else:
            held.append(Reached(location=place_of(other), head=str(other), why=why))
    return held, gone


def _kin(colony, since):
    """{colony's key: how it is kin}: daughters of daughters too, and the mother it was split from in that time."""
    words, generation = {}, [colony]
    while generation:
        daughters = Colony.objects.real().filter(mother__in=generation, started_on__gte=since)
        generation = [daughter for daughter in daughters.select_related("mother") if daughter.pk not in words]
        for daughter in generation:
            words[daughter.pk] = f"daughter of {daughter.mother}, kin of {colony} (foulbrood suspected)"
    if colony.mother_id is not None and colony.started_on >= since:
        words[colony.mother_id] = (
            f"mother of {colony} (foulbrood suspected), split on {told(colony.started_on)}"
        )
    return words


def _neighbours(colony, since, until):
    """{colony's key: words} of colonies that stood in a yard with it in that time."""
    stays = stays_until(until)
    words = {}
    for ours in stays.pop(colony.pk, []):
        for other, places in stays.items():
            if any(_together(ours, stay, since) for stay in places):
                words[other] = f"stood in {ours.yard} with {colony} (foulbrood suspected)"
    return words


def _together(ours, other, since):
    same = ours.yard == other.yard and ours.last >= since
    return same and other.first <= ours.last and other.last >= max(ours.first, since)


def _traced(colony, since):
    """({(location's key, part's key): most pieces}, [movements that left the outfit]) of what was on the hive."""
    home, left = place_of(colony).pk, []

    def onward(place, part, day):
        rows = _moves().filter(source=place, part=part, day__gte=day, part__kind__in=HIVE_GEAR)
        for row in rows.order_by("day", "id"):
            if row.target.kind in GONE:
                left.append(row)
            elif row.target.kind == Location.Kind.BENCH:
                yield from _over_bench(row, home)
            elif row.target.is_inside and row.target_id not in (home, place):
                yield Way(day=row.day, part=part, quantity=row.quantity, to=row.target_id, becomes=part)

    parts = _moves().filter(source=home, day__gte=since).order_by().values_list("part", flat=True)
    first = [way for part in parts.distinct() for way in onward(home, part, since)]
    return trace(first, onward), left


def _over_bench(row, home):
    """What came back from the bench in one act for pieces that may be of the hive: the same part, or what it made."""
    rows = Movement.objects.filter(act=row.act_id, source=row.target_id, part__kind=row.part.kind)
    back = list(rows.select_related("target").order_by("id"))
    same = [out for out in back if out.part_id == row.part_id]
    for out in same or back:
        stayed = out.target_id == row.source_id and out.part_id == row.part_id
        if out.target.is_inside and out.target_id != home and not stayed:
            quantity = min(row.quantity, out.quantity)
            yield Way(day=row.day, part=row.part_id, quantity=quantity, to=out.target_id, becomes=out.part_id)


def _moves():
    standing = Movement.objects.filter(act__reverses__isnull=True, act__reversed_by__isnull=True)
    return standing.select_related("target", "part")


def _places(colony, most, since):
    """A Reached for each place where pieces of the hive may lie; their own reason, as graver than the place's."""
    by_place: dict[int, dict] = defaultdict(dict)
    for (place, part), quantity in most.items():
        by_place[place][part] = quantity
    why = f"was on {colony} (foulbrood suspected) since {told(since)}"
    locations = Location.objects.select_related("yard", "colony").filter(pk__in=by_place)
    return [
        Reached(
            location=location,
            head=f"{'On' if location.colony_id else 'Store of'} {location}",
            why=why,
            reason=Hold.Reason.FOULBROOD,
            most=by_place[location.pk],
        )
        for location in locations.order_by("pk")
    ]


def _counted(held):
    """Those where any hive gear lies now, with how many pieces."""
    places = {each.location.pk for each in held}
    holdings = Holding.objects.filter(location__in=places, quantity__gt=0, part__kind__in=HIVE_GEAR)
    lies: dict[int, dict[int, int]] = defaultdict(lambda: defaultdict(int))
    for location, part, quantity in holdings.values_list("location", "part", "quantity"):
        lies[location][part] += quantity
    for each in held:
        there = lies[each.location.pk]
        most = each.most
        pieces = sum(n if most is None else min(n, most.get(part, 0)) for part, n in there.items())
        if pieces:
            yield Reached(**{**vars(each), "pieces": pieces})


def _left(rows, colony):
    parts = Part.objects.in_bulk({row.part_id for row in rows})
    return [
        Gone(
            head=f"{row.quantity} × {parts[row.part_id]}, {row.target} on {told(row.day)}",
            why=f"may have been on {colony} (foulbrood suspected)",
        )
        for row in {row.pk: row for row in rows}.values()
    ]
