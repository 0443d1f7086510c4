"""Gear on its way: store to store, onto a colony, off a colony again.

Takes lines; gives the Act. With `found_allowed` pieces beyond the book are booked as found in the same act.
"""

from inventory.errors import SamePlace
from inventory.gear import Reason
from inventory.ledger.lines import checked
from inventory.ledger.posting import Entry, post
from inventory.ledger.rules import colony_place, refuse_not_living, refuse_unfit, store


def move(*, source, target, lines, day, who, key, found_allowed=False, note=""):
    """From one store to another: a load, many lines, one trip."""

    def entries():
        here, there = store(source), store(target)
        if here == there:
            raise SamePlace(location=here)
        return _carried(checked(lines, act="move"), here, there, Reason.MOVED)

    return post("move", entries, day=day, who=who, key=key, note=note, found_allowed=found_allowed)


def place(*, source, colony, lines, day, who, key, found_allowed=False, note=""):
    """From a store onto a living colony; only what fits its hive and is not held back."""

    def entries():
        here, there = store(source), colony_place(colony)
        refuse_not_living(there, day)
        told = checked(lines, act="place")
        refuse_unfit(told, there, here)
        return _carried(told, here, there, Reason.PLACED)

    return post("place", entries, day=day, who=who, key=key, note=note, found_allowed=found_allowed)


def take_off(*, colony, target, lines, day, who, key, found_allowed=False, note=""):
    """From a living colony into a store. A colony that ended is salvaged instead."""

    def entries():
        here, there = colony_place(colony), store(target)
        refuse_not_living(here, day)
        return _carried(checked(lines, act="take off"), here, there, Reason.TAKEN_OFF)

    return post("take off", entries, day=day, who=who, key=key, note=note, found_allowed=found_allowed)


def _carried(lines, source, target, reason):
    return [
        Entry(
            part=line.part,
            quantity=line.quantity,
            condition=line.condition,
            source=source,
            target=target,
            reason=reason,
        )
        for line in lines
    ]
