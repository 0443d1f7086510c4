"""Gear that comes off a hive under an open case of foulbrood: held back on the way, whatever it was before.

Takes the entries of an act; gives them with those pieces turned over the workbench, each with what it is held for.
Then writes the Hold rows that hang on the act's movements. Acts do not ask: whatever is posted goes through here.
"""

from dataclasses import replace

from inventory.deadouts.fates import HIVE_GEAR
from inventory.deadouts.holds import open_cases
from inventory.gear import Condition, Reason
from inventory.locations import outside
from inventory.models import Hold, Location


def coming_off(entries):
    """The entries, those that bring pieces of such a hive to another place as held back."""
    hives = {entry.source for entry in entries if entry.source.kind == Location.Kind.COLONY}
    cases = open_cases(hives) if hives else {}
    if not cases:
        return entries
    told, origin = [], None
    for entry in entries:
        over_bench = entry.source.kind == Location.Kind.BENCH
        origin = origin if over_bench else entry.source  # over the bench: where the piece lay before
        if origin is None or origin.pk not in cases or not _comes_free(entry, origin):
            told.append(entry)
            continue
        bench = outside(Location.Kind.BENCH)
        if not over_bench:
            told.append(replace(entry, target=bench, reason=Reason.HELD))
        held = {"condition": Condition.HELD, "reason": Reason.HELD, "held": cases[origin.pk]}
        told.append(replace(entry, source=bench, **held))
    return told


def write_reasons(act, entries):
    """The Hold rows of what came off held back."""
    if any(entry.held for entry in entries):
        for row, entry in zip(act.movements.order_by("id"), entries, strict=True):
            if entry.held:
                told = {"reason": entry.held.reason, "why": entry.held.why}
                Hold.objects.create(movement=row, deadout=entry.held.deadout, **told)


def _comes_free(entry, origin):
    moved = entry.target.is_inside and entry.target != origin
    return moved and entry.condition != Condition.HELD and entry.part.kind in HIVE_GEAR
