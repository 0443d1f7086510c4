"""A mistake undone: every movement of an act goes back, by a new act that names it.

Takes an act; gives the reversal, dated as the act itself unless a later day is told, so that no day keeps
the mistake. Once only; refused where a day would end below zero.
"""

from apiary.models import ColonyEvent
from inventory.deadouts.holds import refuse_loosening
from inventory.errors import AlreadyReversed, CannotBeReversed, LoanCameBack, ReversedTooEarly
from inventory.gear import Reason
from inventory.ledger.posting import Entry, post
from inventory.loans import came_back


def reverse(*, act, who, key, day=None, note=""):
    """Puts back what the act moved. An act that told of bees too is undone by yardwork: calling this is a bug."""
    on = act.day if day is None else day

    def entries():
        refuse_loosening(act, who)
        bees_too = ColonyEvent.objects.counted().filter(act_key=act.key).exists()
        assert not bees_too, f"{act.key} told of bees too: yardwork.undo takes it back"
        return entries_back(act, on)

    return post("reverse", entries, day=on, who=who, key=key, note=note, reverses=act)


def entries_back(act, on):
    """The act's movements the other way round; refused where it cannot be reversed on that day."""
    if act.reverses_id is not None:
        raise CannotBeReversed(act=act)
    if type(act).objects.filter(reverses=act).exists():
        raise AlreadyReversed(act=act)
    if on < act.day:
        raise ReversedTooEarly(act=act, day=on, act_day=act.day)
    if came_back(act):
        raise LoanCameBack(act=act)
    rows = act.movements.select_related("part", "source", "target", "order_line__order")
    return [_back(row) for row in rows]


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
