"""What the trade refuses whatever the quantity: dead colonies, gear that does not fit, gear held back.

Takes locations, colonies, lines and days; gives the location or raises. Writes nothing.
"""

from apiary.models import Colony
from inventory.deadouts.holds import why_held
from inventory.errors import (
    ColonyAlive,
    ColonyEnded,
    ColonyNotStarted,
    DoesNotFit,
    HeldBack,
    NotAColony,
    NotAStore,
    NotForHive,
    refuse,
)
from inventory.gear import Condition, Kind
from inventory.locations import location_of
from inventory.models import Location

LOOSE = {
    Kind.FEED: "feed is used up, it does not stand on a hive",
    Kind.CONSUMABLE: "it is used up, it does not stand on a hive",
    Kind.FOUNDATION: "a loose sheet goes into a frame first",
}


def store(ground):
    """The store meant; NotAStore for anything else."""
    location = location_of(ground)
    if location.kind != Location.Kind.STORE:
        raise NotAStore(location=location)
    return location


def colony_place(ground):
    """The colony's location, the colony as it is now; NotAColony for anything else."""
    location = location_of(ground)
    if location.kind != Location.Kind.COLONY:
        raise NotAColony(location=location)
    return _as_it_is_now(location)


def inside(ground):
    """A store or a colony's location, the colony as it is now."""
    location = location_of(ground)
    if not location.is_inside:
        raise NotAStore(location=location)
    return _as_it_is_now(location)


def _as_it_is_now(location):
    """Reads the colony anew and keeps it until the act is written: it must not end meanwhile."""
    if location.colony_id is not None:
        rows = Colony.objects.select_for_update(of=("self",)).select_related("hive_set")
        location.colony = rows.get(pk=location.colony_id)
    return location


def refuse_unstarted(location, day):
    colony = location.colony
    if colony is not None and day < colony.started_on:
        raise ColonyNotStarted(colony=colony, started_on=colony.started_on, day=day)


def refuse_not_living(location, day):
    """A colony must have started and not ended by the evening of the day."""
    refuse_unstarted(location, day)
    colony = location.colony
    if colony is not None and colony.ended_on is not None and colony.ended_on <= day:
        raise ColonyEnded(colony=colony, ended_on=colony.ended_on, day=day)


def refuse_living(location, day):
    """Salvage is for colonies that ended by the day."""
    refuse_unstarted(location, day)
    colony = location.colony
    if colony.ended_on is None or colony.ended_on > day:
        raise ColonyAlive(colony=colony, day=day)


def refuse_unfit(lines, location, source=None):
    """All lines that cannot stand on the colony: wrong width, in pieces, loose, or held back (at `source`, if told)."""
    if location.colony is not None:
        refuse(filter(None, (_misfit(line, location.colony, source) for line in lines)))


def _misfit(line, colony, source):
    part = line.part
    wanted_width = colony.hive_set.width
    if line.condition == Condition.HELD:
        return HeldBack(part=part, act="placed", location=colony, why=why_held(source, part))
    if part.flat:
        return NotForHive(part=part, onto=colony, why="it is in pieces, assemble it first")
    if part.kind in LOOSE:
        return NotForHive(part=part, onto=colony, why=LOOSE[Kind(part.kind)])
    if part.width is not None and part.width != wanted_width:
        return DoesNotFit(part=part, onto=colony, width=part.width, wanted_width=wanted_width)
    return None
