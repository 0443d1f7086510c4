"""The rows of a count's page: what may lie at the place, beside the book or blind, colony by colony where wanted.

Takes a Count; gives a Sheet of Places with Rows. Blind, rows tell what may be there, never how many the book has.
"""

import datetime as dt
from dataclasses import dataclass

from django.db.models import Q

from apiary.colonies import yards_on
from apiary.models import Colony
from inventory.counting.comparing import booked_at
from inventory.gear import Condition, Kind
from inventory.locations import place_of, store_of
from inventory.models import Count, Location, Movement, Part
from inventory.pieces import Row, order_of, pair_of

KNOWN_DAYS = dt.timedelta(days=365)  # what passed through a place in a year may lie there
BOXES = (Kind.BOX, Kind.NUC_BOX)


@dataclass(frozen=True, kw_only=True)
class Place:
    """One place of the count with its rows."""

    location: Location
    rows: tuple[Row, ...]


@dataclass(frozen=True, kw_only=True)
class Sheet:
    places: tuple[Place, ...]
    entered: dict  # (place's key, row's key): pieces

    @property
    def rows(self):
        return [(place, row) for place in self.places for row in place.rows]


def sheet_of(count, *, also=()):
    """The Sheet of a count; `also` names rows of its own place (by key) to be added."""
    parts = Part.objects.in_bulk(field_name="code")
    hives = hives_of(count)
    locations = [count.location, *hives]
    booked = booked_at(locations, count.day)
    entered = entered_in(count)
    places = []
    for location in locations:
        wanted = {(code, condition) for place, code, condition in booked if place == location.pk}
        wanted |= _blind(location, count, parts) if count.blind else set()
        if location in hives:
            wanted = {(code, condition) for code, condition in wanted if parts[code].kind in BOXES}
        wanted |= {pair_of(key) for place, key in entered if place == location.pk}
        if location == count.location:
            wanted |= {pair for pair in map(pair_of, also) if pair is not None and pair[0] in parts}
        rows = [
            Row(
                part=parts[code],
                condition=Condition(condition),
                booked=booked.get((location.pk, code, str(condition)), 0),
            )
            for code, condition in {(code, str(Condition(condition))) for code, condition in wanted}
        ]
        places.append(Place(location=location, rows=tuple(sorted(rows, key=order_of))))
    return Sheet(places=tuple(places), entered=entered)


def sheet_before_count(yard, *, day, blind, with_colonies=False):
    """The Sheet of a count of a yard's store that is not begun: to print, or to fill in as a workbook."""
    return sheet_of(Count(location=store_of(yard), day=day, blind=blind, with_colonies=with_colonies))


def entered_in(count):
    """{(place's key, row's key): pieces} of what the draft holds; nothing of a count that was not begun."""
    if count.pk is None:
        return {}
    lines = count.lines.select_related("part")
    return {
        (line.location_id, Row(part=line.part, condition=Condition(line.condition)).key): line.quantity
        for line in lines
    }


def hives_of(count):
    """The places of the colonies that stood in the yard that evening: alive, or with gear still on them."""
    if not count.with_colonies:
        return []
    stood = yards_on(count.day)
    colonies = Colony.objects.real().filter(started_on__lte=count.day).order_by("tag")
    alive = Q(ended_on__isnull=True) | Q(ended_on__gt=count.day)
    geared = Q(place__holdings__quantity__gt=0)
    rows = colonies.filter(alive | geared).distinct().select_related("hive_set")
    return [place_of(colony) for colony in rows if stood[colony.pk] == count.location.yard_id]


def _blind(location, count, parts):
    """(part's code, condition) of what may be there: on a hive each depth of box of its width, in a store what
    passed through in a year."""
    if location.kind == Location.Kind.COLONY and location != count.location:
        width = location.colony.hive_set.width
        return {
            (part.code, "sound")
            for part in parts.values()
            if part.kind in BOXES and part.width in (width, None) and not part.flat
        }
    since = count.day - KNOWN_DAYS
    rows = Movement.objects.filter(
        Q(source=location) | Q(target=location), day__gte=since, day__lte=count.day
    )
    return {(code, "sound") for code in rows.order_by().values_list("part__code", flat=True).distinct()}
