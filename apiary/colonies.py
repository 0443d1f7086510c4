"""The life of a colony: started, moved, judged, set anew, ended. The only writer of colony state and its events.

Takes plain values and the day; gives the Colony or a question's answer. An act told late (an evening's catching
up) is written on its day and changes the present only where nothing later of its kind is known.
Knows nothing of gear: what an ended colony holds is salvaged by inventory.
"""

import datetime as dt

from django.db import transaction
from django.utils import timezone

from apiary.errors import (
    ColonyEnded,
    ColonyNotStarted,
    FutureDay,
    LaterEvent,
    MotherUnfit,
    NoTag,
    SameSet,
    SameYard,
    TagTaken,
    UnknownWord,
    told,
)
from apiary.models import Colony, ColonyEvent

STANDING = (ColonyEvent.Kind.STARTED, ColonyEvent.Kind.MOVED)


@transaction.atomic
def start(
    *, tag, yard, hive_set, day, who, origin=Colony.Origin.OVERWINTERED, mother=None, strength="fair", note=""
):
    """A colony begins in a yard: overwintered into the books, or a split, nuc, package or swarm."""
    refuse_future(day)
    tag = _fresh_tag(tag)
    _known(Colony.Origin, origin, "origin")
    _known(Colony.Strength, strength, "strength")
    if mother is not None:
        _refuse_mother(Colony.objects.get(pk=mother.pk), tag, day)
    colony = Colony.objects.create(
        tag=tag,
        yard=yard,
        origin=origin,
        mother=mother,
        started_on=day,
        hive_set=hive_set,
        strength=strength,
    )
    _record(colony, ColonyEvent.Kind.STARTED, day, who, yard=yard, note=note)
    return colony


@transaction.atomic
def move(colony, *, yard, day, who, note=""):
    """The colony is taken to another yard."""
    colony = _living(colony, day)
    if yard_on(colony, day).pk == yard.pk:
        raise SameYard(colony=colony, yard=yard, day=day)
    latest = not colony.events.filter(kind__in=STANDING, day__gt=day).exists()
    _record(colony, ColonyEvent.Kind.MOVED, day, who, yard=yard, note=note)
    return _set(colony, "yard", yard, latest)


@transaction.atomic
def judge(colony, *, strength, day, who, note=""):
    """The colony was looked at: strong, fair or weak."""
    colony = _living(colony, day)
    _known(Colony.Strength, strength, "strength")
    latest = not colony.events.filter(kind=ColonyEvent.Kind.STRENGTH, day__gt=day).exists()
    _record(colony, ColonyEvent.Kind.STRENGTH, day, who, note=_said(strength, note))
    return _set(colony, "strength", strength, latest)


@transaction.atomic
def change_set(colony, *, hive_set, day, who, note=""):
    """The colony stands in another set from now on; its gear is moved by acts of the ledger."""
    colony = _living(colony, day)
    if colony.hive_set_id == hive_set.pk:
        raise SameSet(colony=colony, hive_set=hive_set)
    latest = not colony.events.filter(kind=ColonyEvent.Kind.SET, day__gt=day).exists()
    _record(colony, ColonyEvent.Kind.SET, day, who, note=_said(hive_set.code, note))
    return _set(colony, "hive_set", hive_set, latest)


@transaction.atomic
def end(colony, *, why, day, who, note=""):
    """The colony died, was united, sold or lost. What the book has on it waits to be salvaged."""
    colony = _living(colony, day)
    _known(Colony.Ended, why, "reason for a colony's end")
    later = colony.events.filter(day__gt=day).order_by("day", "id").last()
    if later is not None:
        raise LaterEvent(colony=colony, day=day, event=later.get_kind_display(), event_day=later.day)
    colony.ended_on, colony.ended_why = day, why
    colony.save(update_fields=["ended_on", "ended_why"])
    _record(colony, ColonyEvent.Kind.ENDED, day, who, note=_said(why, note))
    return colony


def yard_on(colony, day):
    """The yard in which the colony stood on the evening of a day."""
    standing = colony.events.filter(kind__in=STANDING, day__lte=day).select_related("yard")
    last = standing.order_by("day", "id").last()
    return last.yard if last is not None else colony.yard


def yards_on(day=None):
    """{colony's id: yard's id} on the evening of a day; without a day as it is now. Ended ones stay where they stood."""
    stood = dict(Colony.objects.values_list("pk", "yard_id"))
    if day is not None:
        events = ColonyEvent.objects.filter(kind__in=STANDING, day__lte=day).order_by("day", "id")
        stood.update(events.values_list("colony_id", "yard_id"))
    return stood


def refuse_future(day):
    """A day is a date, today at the latest."""
    if not isinstance(day, dt.date) or isinstance(day, dt.datetime):
        raise TypeError(f"a day is a date, got {day!r}")
    today = timezone.localdate()
    if day > today:
        raise FutureDay(day=day, today=today)


def _living(colony, day):
    """The colony's row, locked; refused where it had not started or had ended on the day."""
    refuse_future(day)
    colony = Colony.objects.select_for_update().get(pk=colony.pk)
    if day < colony.started_on:
        raise ColonyNotStarted(colony=colony, started_on=colony.started_on, day=day)
    if colony.ended_on is not None:
        raise ColonyEnded(colony=colony, ended_on=colony.ended_on, day=day)
    return colony


def _set(colony, field, value, latest):
    if latest:
        setattr(colony, field, value)
        colony.save(update_fields=[field])
    return colony


def _record(colony, kind, day, who, *, yard=None, note=""):
    yard = yard or yard_on(colony, day)
    ColonyEvent.objects.create(colony=colony, day=day, kind=kind, yard=yard, note=note[:200], who=who)


def _said(word, note):
    return f"{word}: {note}" if note else str(word)


def _fresh_tag(tag):
    cleaned = " ".join(str(tag).split())
    if not 1 <= len(cleaned) <= 30:
        raise NoTag(tag=cleaned)
    earlier = Colony.objects.filter(tag__iexact=cleaned).select_related("yard").first()
    if earlier is not None:
        raise TagTaken(tag=earlier.tag, yard=earlier.yard)
    return cleaned


def _refuse_mother(mother, tag, day):
    if day < mother.started_on:
        raise MotherUnfit(
            mother=mother, tag=tag, day=day, why=f"she started only on {told(mother.started_on)}"
        )
    if mother.ended_on is not None and mother.ended_on < day:
        raise MotherUnfit(mother=mother, tag=tag, day=day, why=f"she ended on {told(mother.ended_on)}")


def _known(words, word, what):
    if word not in words.values:
        raise UnknownWord(word=word, what=what, choices=", ".join(words.values))
