"""What of a dead hive was saved, is held back and was written off, at list price. For the keeper's eyes.

Takes a deadout; gives cents. Only its own hive counts, not what a suspicion reached elsewhere.
"""

from dataclasses import dataclass

from inventory.gear import Condition
from inventory.models import Location


@dataclass(frozen=True, kw_only=True)
class Worth:
    """Whole cents, and pieces."""

    saved_cents: int = 0
    held_cents: int = 0
    lost_cents: int = 0
    saved: int = 0
    held: int = 0
    lost: int = 0


def own_movements(deadout):
    """Where the pieces of the hive itself went: rows out of the colony, those over the bench by their second half."""
    rows = deadout.act.movements.filter(found=False).select_related("part", "source", "target")
    own = False
    for row in rows.order_by("id"):
        own = row.source.colony_id == deadout.colony_id or (own and row.source.kind == Location.Kind.BENCH)
        if own and row.target.kind != Location.Kind.BENCH:
            yield row


def worth_of(deadout):
    sums = dict.fromkeys(Worth.__dataclass_fields__, 0)
    for row in own_movements(deadout):
        kept = row.target.kind == Location.Kind.STORE
        name = "lost" if not kept else "held" if row.condition == Condition.HELD else "saved"
        sums[name] += row.quantity
        sums[f"{name}_cents"] += row.quantity * row.part.list_price_cents
    return Worth(**sums)
