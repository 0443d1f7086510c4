"""What the books tell of colonies, held against the acts that told it and against the colonies as they stand.

Takes nothing but the tables; gives every fault in words. An act on bees and gear is there whole or not at all, and
one that was taken back counts nowhere. Writes nothing.
"""

from apiary.errors import told
from apiary.models import Colony, ColonyEvent
from inventory.models import Act

Kind = ColonyEvent.Kind


def bees_faults():
    """Events without their act, events that count although it was reversed or the other way round, odd colonies."""
    acts = dict(Act.objects.values_list("key", "reversed_by"))
    for event in ColonyEvent.objects.select_related("colony").order_by("id").iterator():
        yield from _of_an_act(event, acts) if event.act_key else _outside_any(event, acts)
    yield from _colony_faults()


def _of_an_act(event, acts):
    if event.sealed_by != event.act_key:
        yield f"{_named(event)} is not under the seal of the act that told it."
    if event.act_key not in acts:
        yield f"{_named(event)} was told by an act that is not in the books ({event.act_key})."
    elif event.undone and acts[event.act_key] is None:
        yield f"{_named(event)} does not count, but its act was not reversed."
    elif not event.undone and acts[event.act_key] is not None:
        yield f"{_named(event)} still counts, but its act was reversed."


def _outside_any(event, acts):
    """Told outside any act it lies under the seal of the next one, and nothing takes it back."""
    if event.sealed_by and event.sealed_by not in acts:
        yield f"{_named(event)} is under the seal of an act that is not in the books ({event.sealed_by})."
    if event.undone:
        yield f"{_named(event)} does not count, but it was told outside any act: nothing takes it back."


def _named(event):
    return f"Colony {event.colony}: {event.get_kind_display()} on {told(event.day)}"


def _colony_faults():
    """Colonies that stand elsewhere, or live or ended otherwise, than their events say."""
    counted = ColonyEvent.objects.counted().filter(kind__in=(Kind.STARTED, Kind.MOVED, Kind.ENDED))
    yards, ends = {}, {}
    for colony, kind, yard, day in counted.order_by("day", "id").values_list(
        "colony_id", "kind", "yard__name", "day"
    ):
        if kind == Kind.ENDED:
            ends[colony] = day
        else:
            yards[colony] = yard
    for colony in Colony.objects.select_related("yard").order_by("tag").iterator():
        if colony.pk in yards and yards[colony.pk] != colony.yard.name:
            yield f"Colony {colony} stands in {colony.yard}, its events say {yards[colony.pk]}."
        if colony.pk in yards | ends and ends.get(colony.pk) != colony.ended_on:
            says, tells = (
                f"ended on {told(day)}" if day else "lives" for day in (colony.ended_on, ends.get(colony.pk))
            )
            yield f"Colony {colony} {says}, its events say it {tells}."
