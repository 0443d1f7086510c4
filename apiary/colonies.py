"""The life of a colony: started, moved, split, requeened, ended. The only writer of colony state and its events.

Takes plain values, the day and the key of the act; gives the Colony or a question's answer. An act told late (an
evening's catching up) is written on its day and changes the present only where nothing later of its kind is known.
What an act did is taken back by its key. Knows nothing of gear: what an ended colony holds is salvaged by inventory.
"""

import datetime as dt

from django.db import transaction
from django.db.models import Q
from django.utils import timezone

from apiary.errors import (
    ColonyEnded,
    ColonyNotStarted,
    FutureDay,
    LaterEvent,
    MoreRestsOnIt,
    MotherUnfit,
    NoTag,
    SameSet,
    SameYard,
    TagTaken,
    UnknownWord,
    refuse,
    told,
)
from apiary.models import Colony, ColonyEvent, HiveSet
from apiary.queens import QueenFrom
from apiary.rights import refuse_elsewhere

Kind = ColonyEvent.Kind
STANDING = (Kind.STARTED, Kind.MOVED)
RESTS = {  # what later events of the same colony rest on one of this kind
    Kind.STARTED: tuple(Kind),
    Kind.MOVED: (Kind.MOVED, Kind.SPLIT, Kind.UNITED, Kind.ENDED),
    Kind.SET: (Kind.SET,),
}
SEALED = ("colony_id", "day", "kind", "yard_id", "note", "was", "who_id", "recorded_at", "act_key")
ENDS = tuple(
    why for why in Colony.Ended.values if why != Colony.Ended.MISTAKE
)  # a mistake is undone, not ended


@transaction.atomic
def start(
    *,
    tag,
    yard,
    hive_set,
    day,
    who,
    origin=Colony.Origin.OVERWINTERED,
    mother=None,
    strength="fair",
    note="",
    act_key="",
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
    _record(colony, Kind.STARTED, day, who, yard=yard, note=note, act_key=act_key)
    return colony


@transaction.atomic
def move(colony, *, yard, day, who, note="", act_key=""):
    """The colony is taken to another yard."""
    colony = _living(colony, day)
    if yard_on(colony, day).pk == yard.pk:
        raise SameYard(colony=colony, yard=yard, day=day)
    latest = not colony.events.counted().filter(kind__in=STANDING, day__gt=day).exists()
    _record(colony, Kind.MOVED, day, who, yard=yard, note=note, act_key=act_key)
    return _set(colony, "yard", yard, latest)


@transaction.atomic
def judge(colony, *, strength, day, who, note="", act_key=""):
    """The colony was looked at: strong, fair or weak."""
    colony = _living(colony, day)
    _known(Colony.Strength, strength, "strength")
    latest = not colony.events.counted().filter(kind=Kind.STRENGTH, day__gt=day).exists()
    words = {"note": _said(strength, note), "was": colony.strength, "act_key": act_key}
    _record(colony, Kind.STRENGTH, day, who, **words)
    return _set(colony, "strength", strength, latest)


@transaction.atomic
def change_set(colony, *, hive_set, day, who, note="", act_key=""):
    """The colony stands in another set from now on; its gear is moved by acts of the ledger."""
    colony = _living(colony, day)
    if colony.hive_set_id == hive_set.pk:
        raise SameSet(colony=colony, hive_set=hive_set)
    latest = not colony.events.counted().filter(kind=Kind.SET, day__gt=day).exists()
    words = {"note": _said(hive_set.code, note), "was": colony.hive_set.code, "act_key": act_key}
    _record(colony, Kind.SET, day, who, **words)
    return _set(colony, "hive_set", hive_set, latest)


@transaction.atomic
def end(colony, *, why, day, who, note="", act_key=""):
    """The colony died, was united, sold or lost. What the book has on it waits to be salvaged."""
    colony = _living(colony, day)
    if why not in ENDS:
        raise UnknownWord(word=why, what="reason for a colony's end", choices=", ".join(ENDS))
    later = colony.events.counted().filter(day__gt=day).order_by("day", "id").last()
    if later is not None:
        raise LaterEvent(colony=colony, day=day, event=later.get_kind_display(), event_day=later.day)
    colony.ended_on, colony.ended_why = day, why
    colony.save(update_fields=["ended_on", "ended_why"])
    _record(colony, Kind.ENDED, day, who, note=_said(why, note), act_key=act_key)
    return colony


@transaction.atomic
def split(mother, *, tag, yard, hive_set, day, who, origin=Colony.Origin.SPLIT, note="", act_key=""):
    """A daughter is made from a mother alive that day; both keep it in their history. Gives the daughter."""
    mother = _there(mother, day)
    told_of = {"day": day, "who": who, "act_key": act_key}
    words = {"hive_set": hive_set, "origin": origin, "mother": mother, "note": note}
    daughter = start(tag=tag, yard=yard, **words, **told_of)
    _record(mother, Kind.SPLIT, note=_said(daughter.tag, note), **told_of)
    return daughter


@transaction.atomic
def unite(colony, *, into, day, who, note="", act_key=""):
    """The colony's bees live on in another hive; both keep it in their history. Gives the one that is no more."""
    into = _there(into, day)
    colony = end(
        colony, why=Colony.Ended.UNITED, day=day, who=who, note=_said(into.tag, note), act_key=act_key
    )
    _record(into, Kind.UNITED, day, who, note=_said(colony.tag, note), act_key=act_key)
    return colony


@transaction.atomic
def requeen(colony, *, queen, day, who, note="", act_key=""):
    """A colony alive that day has another queen; `queen` says where she is from."""
    colony = _there(colony, day)
    _known(QueenFrom, queen, "queen's origin")
    words = {"note": _said(QueenFrom(queen).label, note), "act_key": act_key}
    _record(colony, Kind.REQUEENED, day, who, **words)
    return colony


@transaction.atomic
def undo(act_key, *, who, day):
    """Takes back all that an act did to colonies; its events stay in the book and no longer count.

    Refused where something later needs it. A colony the act started ends as a mistake on its start day and frees
    its tag. Gives the colonies touched.
    """
    refuse_future(day)
    events = list(ColonyEvent.objects.counted().filter(act_key=act_key).order_by("id")) if act_key else []
    touched = Colony.objects.select_for_update().in_bulk({event.colony_id for event in events})
    refuse(filter(None, (_resting(event, touched[event.colony_id]) for event in events)))
    ColonyEvent.objects.filter(pk__in=[event.pk for event in events]).update(undone=True)
    for event in reversed(events):
        _take_back(event, touched[event.colony_id], who, day)
    return list(touched.values())


def seal_told(act_key):
    """Lays what was told of colonies outside any act under the seal of this one, with what it told itself.

    Gives those events in their order, as SEALED fields: what may never change once it is told.
    """
    ColonyEvent.objects.filter(sealed_by="").update(sealed_by=act_key)
    return list(ColonyEvent.objects.filter(sealed_by=act_key).order_by("id").values_list(*SEALED))


def yard_on(colony, day):
    """The yard in which the colony stood on the evening of a day."""
    standing = colony.events.counted().filter(kind__in=STANDING, day__lte=day).select_related("yard")
    last = standing.order_by("day", "id").last()
    return last.yard if last is not None else colony.yard


def yards_on(day=None):
    """{colony's id: yard's id} on the evening of a day; without a day as it is now. Ended ones stay where they stood."""
    stood = dict(Colony.objects.values_list("pk", "yard_id"))
    if day is not None:
        events = ColonyEvent.objects.counted().filter(kind__in=STANDING).order_by("day", "id")
        moved_since = (
            events.filter(day__gt=day).order_by().values("colony")
        )  # the others stand where they stood
        before = events.filter(day__lte=day, colony__in=moved_since)
        stood.update(before.values_list("colony_id", "yard_id"))
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


def _there(colony, day):
    """The colony's row, locked; refused where it was not alive on the evening of the day."""
    refuse_future(day)
    colony = Colony.objects.select_for_update().get(pk=colony.pk)
    if day < colony.started_on:
        raise ColonyNotStarted(colony=colony, started_on=colony.started_on, day=day)
    if colony.ended_on is not None and colony.ended_on <= day:
        raise ColonyEnded(colony=colony, ended_on=colony.ended_on, day=day)
    return colony


def _set(colony, field, value, latest):
    if latest:
        setattr(colony, field, value)
        colony.save(update_fields=[field])
    return colony


def _record(colony, kind, day, who, *, yard=None, note="", was="", act_key=""):
    yard = yard or yard_on(colony, day)
    refuse_elsewhere(who, [yard, colony.yard_id])
    words = {"note": note[:200], "was": was, "act_key": act_key, "sealed_by": act_key}
    ColonyEvent.objects.create(colony=colony, day=day, kind=kind, yard=yard, who=who, **words)


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


def _resting(event, colony):
    """The refusal where something of another act needs the event; None where nothing does."""
    others = colony.events.counted().filter(kind__in=RESTS.get(event.kind, ())).exclude(act_key=event.act_key)
    after = Q(day__gt=event.day) | Q(day=event.day, id__gt=event.pk)
    later = others.filter(after).first()
    if later is None and event.kind == Kind.STARTED:
        daughters = ColonyEvent.objects.counted().filter(kind=Kind.STARTED, colony__mother=colony)
        later = daughters.exclude(act_key=event.act_key).first()
    if later is None:
        return None
    return MoreRestsOnIt(
        colony=colony,
        event=event.get_kind_display(),
        event_day=event.day,
        later=f"{later.colony} {later.get_kind_display()}",
        later_day=later.day,
    )


def _take_back(event, colony, who, day):
    """Sets the colony to what its counted events say without this one."""
    if event.kind == Kind.STARTED:
        _mistaken(colony, event.yard, who, day)
    elif event.kind == Kind.MOVED:
        colony.yard = colony.events.counted().filter(kind__in=STANDING).last().yard
    elif event.kind == Kind.STRENGTH:
        colony.strength = _word_now(colony, Kind.STRENGTH)
    elif event.kind == Kind.SET:
        colony.hive_set = HiveSet.objects.get(code=_word_now(colony, Kind.SET))
    elif event.kind == Kind.ENDED:
        colony.ended_on, colony.ended_why = None, ""
    colony.save()


def _word_now(colony, kind):
    """The strength or set by the last event that counts; by none, what was before the first ever told."""
    events = colony.events.filter(kind=kind)
    last = events.counted().last()
    return last.note.partition(":")[0] if last is not None else events.order_by("id").first().was


def _mistaken(colony, yard, who, day):
    note = _said(Colony.Ended.MISTAKE, f"{colony.tag}, undone on {told(day)}")
    _record(colony, Kind.ENDED, colony.started_on, who, yard=yard, note=note)
    colony.tag = f"{colony.tag[:14]}, mistake {colony.pk}"
    colony.ended_on, colony.ended_why = colony.started_on, Colony.Ended.MISTAKE
