"""Writes why gear is held back: entries that turn pieces to held, each with its reason, and the Hold rows after them.

Takes steps (an entry and what it is held for); gives entries for an act, then the rows that hang on its movements.
"""

from collections import defaultdict
from dataclasses import dataclass

from inventory.deadouts.fates import HIVE_GEAR
from inventory.deadouts.holds import GRAVITY, Held, lots_at
from inventory.gear import Condition, Reason
from inventory.ledger.posting import Entry, turned
from inventory.models import Hold, Holding


@dataclass(frozen=True, kw_only=True)
class Step:
    """One movement to be; `held` where it brings pieces that are held back for a reason of their own."""

    entry: Entry
    held: Held | None = None


def as_steps(entries, held=None):
    """Steps of which those that end as held gear at a place carry the reason."""
    return [Step(entry=entry, held=held if _comes_held(entry) else None) for entry in entries]


def hold_steps(reach, *, deadout=None):
    """Steps that hold back all a suspicion reaches: what is sound or to mend, and what was held for less.

    What is held for this deadout already counts towards the most that may have been on its hive.
    """
    wanted: dict[int, list] = {}
    for each in reach.held:
        wanted.setdefault(each.location.pk, []).append(each)
    rows = Holding.objects.filter(location__in=wanted, quantity__gt=0, part__kind__in=HIVE_GEAR)
    steps: list[Step] = []
    taken: dict[tuple, int] = defaultdict(int)
    for row in rows.select_related("location__colony", "location__yard", "part").order_by("id"):
        lots = lots_at(row.location, row.part)
        for each in wanted[row.location_id]:
            quantity = _free(row, lots, each.reason) - taken[row.pk, None]
            if each.most is not None:
                ours = sum(lot.quantity for lot in lots if _is_ours(lot, deadout, each.reason))
                limit = each.most.get(row.part_id, 0) - ours
                quantity = min(quantity, limit - taken[row.part_id, each.location.pk, each.reason])
            if quantity > 0:
                taken[row.pk, None] += quantity
                taken[row.part_id, each.location.pk, each.reason] += quantity
                steps += as_steps(_turned(row, quantity), Held(reason=each.reason, why=each.why))
    return steps


def write_holds(act, steps, deadout):
    """The Hold rows of an act just written from these steps."""
    rows = act.movements.filter(found=False).order_by("id")
    for row, step in zip(rows, steps, strict=True):
        if step.held is not None:
            case = step.held.deadout or deadout
            Hold.objects.create(movement=row, deadout=case, reason=step.held.reason, why=step.held.why[:200])


def _comes_held(entry):
    return entry.condition == Condition.HELD and entry.target.is_inside


def _free(row, lots, reason):
    """Pieces of a holding not yet held for this reason or a graver one."""
    if row.condition != Condition.HELD:
        return row.quantity
    return sum(lot.quantity for lot in lots if lot.gravity < GRAVITY[reason])


def _is_ours(lot, deadout, reason):
    return deadout is not None and lot.deadout == deadout and lot.gravity >= GRAVITY[reason]


def _turned(row, quantity):
    return turned(
        part=row.part,
        quantity=quantity,
        source=row.location,
        target=row.location,
        was=Condition(row.condition),
        becomes=Condition.HELD,
        reason=Reason.HELD,
    )
