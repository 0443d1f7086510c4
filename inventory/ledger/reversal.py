"""A mistake undone: every movement of an act goes back, by a new act that names it.

Takes an act; gives the reversal, dated as the act itself unless a later day is told, so that no day keeps
the mistake. Once only; refused where a day would end below zero. Gear set on a hive that an open case of foulbrood
reached does not come back into stock so: only the keeper may say that it never stood there.
"""

from apiary.models import ColonyEvent
from apiary.rights import KEEPER, role_of
from inventory.deadouts.coming_off import coming_off
from inventory.deadouts.holds import open_cases, refuse_loosening
from inventory.errors import (
    AlreadyReversed,
    CannotBeReversed,
    LoanCameBack,
    OffACase,
    ReversedTooEarly,
    refuse,
)
from inventory.gear import Reason
from inventory.ledger.posting import Entry, post
from inventory.loans import came_back
from inventory.models import Location


def reverse(*, act, who, key, day=None, note="", never_stood=False):
    """Puts back what the act moved. An act that told of bees too is undone by yardwork: calling this is a bug."""
    on = act.day if day is None else day

    def entries():
        refuse_loosening(act, who)
        bees_too = ColonyEvent.objects.counted().filter(act_key=act.key).exists()
        assert not bees_too, f"{act.key} told of bees too: yardwork.undo takes it back"
        return entries_back(act, on, free=may_free(who, never_stood))

    return post("reverse", entries, day=on, who=who, key=key, note=note, reverses=act)


def may_free(who, never_stood):
    """Whether gear may come sound off a hive under a case: the keeper says that it never stood there."""
    return never_stood and (who is None or role_of(who) == KEEPER)


def off_a_case(act):
    """{hive: why} of hives under an open case off which undoing the act would bring gear as sound."""
    return _off_a_case([_back(row) for row in _rows(act)])


def entries_back(act, on, *, free=False):
    """The act's movements the other way round; refused where it cannot be reversed on that day.

    `free`: gear on hives under an open case comes back as it was.
    """
    if act.reverses_id is not None:
        raise CannotBeReversed(act=act)
    if type(act).objects.filter(reverses=act).exists():
        raise AlreadyReversed(act=act)
    if on < act.day:
        raise ReversedTooEarly(act=act, day=on, act_day=act.day)
    if came_back(act):
        raise LoanCameBack(act=act)
    back = [_back(row) for row in _rows(act)]
    if not free:
        refuse(OffACase(act=act, colony=hive.colony, why=why) for hive, why in _off_a_case(back).items())
    return back


def _rows(act):
    return act.movements.select_related("part", "source", "target__colony", "order_line__order")


def _off_a_case(back):
    hives = {entry.source for entry in back if entry.source.kind == Location.Kind.COLONY}
    cases = open_cases(hives) if hives else {}
    of_hive = {hive: [entry for entry in back if entry.source == hive] for hive in hives if hive.pk in cases}
    return {hive: cases[hive.pk].why for hive, own in of_hive.items() if coming_off(own) != own}


def _back(row):
    return Entry(
        part=row.part,
        quantity=row.quantity,
        condition=row.condition,
        source=row.target,
        target=row.source,
        reason=Reason(row.reason),
        order_line=row.order_line,
        found=row.found,
    )
