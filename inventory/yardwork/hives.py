"""The hives an act is done to: each colony locked as it is now, with its place and the number told for it.

Takes {colony: number}; gives Hives, or raises everything that is wrong with any of them. Writes no act.
"""

from dataclasses import dataclass

from django.utils import timezone

from apiary.colonies import yards_on
from apiary.models import Colony
from inventory.errors import NothingGiven, Refused, refuse
from inventory.gear import Condition
from inventory.ledger.lines import whole
from inventory.ledger.rules import refuse_not_living
from inventory.locations import places_of
from inventory.models import Holding, Location, Part
from inventory.stock import on_colony


@dataclass(frozen=True, kw_only=True)
class HiveTold:
    place: Location
    number: int

    @property
    def colony(self):
        return self.place.colony


def hives_told(colonies, *, day, act, what):
    """Those with a number above zero, alive on the day, in the order told. `what` is counted."""
    numbers = {colony.pk: whole(what, number, lowest=0) for colony, number in colonies.items()}
    wanted = [pk for pk, number in numbers.items() if number]
    if not wanted:
        raise NothingGiven(act=act)
    rows = Colony.objects.select_for_update(of=("self",)).select_related("hive_set")
    places = places_of(rows.in_bulk(wanted).values())
    hives = [HiveTold(place=places[pk], number=numbers[pk]) for pk in wanted]
    refuse_each(hives, lambda hive: refuse_not_living(hive.place, day))
    return hives


def refuse_each(hives, check):
    """Calls the check for each hive and raises all that was refused together."""
    problems = []
    for hive in hives:
        try:
            check(hive)
        except Refused as refusal:
            problems += refusal.problems
    refuse(problems)


def standing(yard, *, on):
    """The colonies alive in a yard on the evening of a day, by tag."""
    alive = Colony.objects.alive(on=on).select_related("hive_set", "yard").order_by("tag")
    if on >= timezone.localdate():
        return list(alive.in_yard(yard))
    stood = yards_on(on)
    return [colony for colony in alive if stood[colony.pk] == yard.pk]


def sound_gear_on(colonies, *, as_of=None):
    """{colony's id: {Part: sound pieces}} by the book: one question for all today, one for each on a past day."""
    gear: dict[int, dict[Part, int]] = {colony.pk: {} for colony in colonies}
    if as_of is None:
        rows = Holding.objects.filter(location__colony__in=gear, condition=Condition.SOUND, quantity__gt=0)
        for row in rows.select_related("part", "location"):
            colony = row.location.colony_id
            assert colony is not None
            gear[colony][row.part] = row.quantity
        return gear
    parts = Part.objects.in_bulk(field_name="code")
    for colony in colonies:
        sound = {
            g.part: n for g, n in on_colony(colony, as_of=as_of).items() if g.condition == Condition.SOUND
        }
        gear[colony.pk] = {parts[code]: number for code, number in sound.items()}
    return gear
