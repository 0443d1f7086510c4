"""Counted beside booked: each line of a count with what the book says of that evening, and the frames a box takes along.

Takes a Count; gives Compared rows and the token of what was shown, so that nothing is posted over a book that moved.
A posted count is told as it was when it was posted.
"""

import hashlib
from dataclasses import dataclass

from django.utils import timezone

from inventory.gear import Condition
from inventory.models import Count, Holding, Location, Part
from inventory.reconcile import Difference, Piece, frames_along
from inventory.stock import on_hand


@dataclass(frozen=True, kw_only=True)
class Compared:
    """One gear at one place. `along`: nobody counted it, it goes with its box."""

    location: Location
    part: Part
    condition: Condition
    difference: Difference
    along: bool = False

    @property
    def name(self):
        name = self.part.name[:1].upper() + self.part.name[1:]
        return name if self.condition == Condition.SOUND else f"{name}, {self.condition}"

    @property
    def words(self):
        gap = self.difference.gap
        return f"{gap:,} more" if gap > 0 else f"{-gap:,} missing" if gap < 0 else "agrees"


def piece_of(part):
    """A part as the rules of reconciling know it."""
    return Piece(
        code=part.code, kind=part.kind, depth=part.depth, width=part.width, comb=part.comb, flat=part.flat
    )


def booked_at(locations, day):
    """{(place, part, condition): booked on the evening of the day} of several places."""
    if day >= timezone.localdate():
        rows = Holding.objects.filter(location__in=locations, quantity__gt=0)
        return {
            (row[0], row[1], row[2]): row[3]
            for row in rows.values_list("location_id", "part__code", "condition", "quantity")
        }
    return {
        (place.pk, gear.part, gear.condition.value): quantity
        for place in locations
        for gear, quantity in on_hand(place, as_of=day).items()
    }


def compared(count):
    """Compared rows of a count, in the order in which they were entered, frames along with their boxes last."""
    lines = list(count.lines.select_related("location__yard", "location__colony", "part").order_by("id"))
    if count.status == Count.Status.POSTED:
        return [_row(line, line.booked) for line in lines]
    places = {line.location_id: line.location for line in lines}
    gear = booked_at(places.values(), count.day)
    rows = [_row(line, gear.get((line.location_id, line.part.code, line.condition), 0)) for line in lines]
    return rows + (_along(rows, gear, places) if count.with_colonies else [])


def _row(line, booked):
    return Compared(
        location=line.location,
        part=line.part,
        condition=Condition(line.condition),
        difference=Difference(
            place=line.location_id,
            part=line.part.code,
            condition=line.condition,
            booked=booked or 0,
            counted=line.quantity,
        ),
    )


def _along(rows, gear, places):
    """Frames of the boxes that are missing on colonies."""
    hives = {pk for pk, place in places.items() if place.kind == Location.Kind.COLONY}
    parts = Part.objects.in_bulk(field_name="code")
    differences = [row.difference for row in rows if row.location.pk in hives]
    there = {key: quantity for key, quantity in gear.items() if key[0] in hives}
    pieces = {code: piece_of(part) for code, part in parts.items()}
    return [
        Compared(
            location=places[row.place],
            part=parts[row.part],
            condition=Condition(row.condition),
            difference=row,
            along=True,
        )
        for row in frames_along(differences, there, pieces)
    ]


def token_of(rows):
    """A short word for exactly these differences."""
    told = sorted((*row.difference.key, row.difference.booked, row.difference.counted) for row in rows)
    return hashlib.sha256(repr(told).encode()).hexdigest()[:24]
