"""Where each colony stood and when: its stays, one after another, by what its events say.

Takes a day; gives stays up to it, of all colonies at once. Writes nothing.
"""

from collections import defaultdict
from dataclasses import dataclass
from datetime import date

from apiary.models import Colony, ColonyEvent, Yard

STANDING = (ColonyEvent.Kind.STARTED, ColonyEvent.Kind.MOVED)


@dataclass(frozen=True, kw_only=True)
class Stay:
    """A colony in a yard from a day to a day, both counted."""

    yard: Yard
    first: date
    last: date


def stays_until(until):
    """{colony's key: [Stay, in order]}; those entered by mistake are left out."""
    events = ColonyEvent.objects.filter(kind__in=STANDING, undone=False, day__lte=until)
    rows = events.exclude(colony__ended_why=Colony.Ended.MISTAKE).select_related("yard", "colony")
    stays: dict[int, list[Stay]] = defaultdict(list)
    for event in rows.order_by("day", "id"):
        stay = Stay(yard=event.yard, first=event.day, last=event.colony.ended_on or until)
        places = stays[event.colony_id]
        if places:
            places[-1] = Stay(yard=places[-1].yard, first=places[-1].first, last=event.day)
        places.append(stay)
    return stays


def yard_at(stays, day):
    """The yard by the evening of a day; the first one where the colony had not started yet."""
    begun = [stay for stay in stays if stay.first <= day]
    return (begun[-1] if begun else stays[0]).yard
