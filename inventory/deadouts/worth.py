"""What of a dead hive was saved, is held back and was written off: pieces, and for the keeper's eyes their money.

Takes a deadout; gives pieces and cents. A piece is worth the moving average of the books on the day it was worked;
where they know none, its list price, and how many those are is told. Only its own hive counts, not what a suspicion
reached elsewhere.
"""

from dataclasses import dataclass
from decimal import Decimal

from inventory.gear import Condition
from inventory.models import Location
from inventory.value.spread import part_of_whole
from inventory.valuing import pools


@dataclass(frozen=True, kw_only=True)
class Worth:
    """Pieces."""

    saved: int = 0
    held: int = 0
    lost: int = 0


@dataclass(frozen=True, kw_only=True)
class WorthInMoney:
    """Whole cents; `at_list` counts the pieces that are told at list price."""

    saved_cents: int = 0
    held_cents: int = 0
    lost_cents: int = 0
    at_list: int = 0


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
        sums[_became(row)] += row.quantity
    return Worth(**sums)


def money_of(deadout):
    """Reads the whole books up to the day it was worked."""
    sums = dict.fromkeys(WorthInMoney.__dataclass_fields__, 0)
    there = pools(last=deadout.act.day, without=deadout.act)
    for row in own_movements(deadout):
        pieces, cents = there.get(row.part_id, (0, 0))
        if pieces > 0:
            worth = part_of_whole(cents, row.quantity, pieces)
        else:
            worth = row.quantity * row.part.list_price_cents
            sums["at_list"] += row.quantity
        sums[f"{_became(row)}_cents"] += worth
    return WorthInMoney(**sums)


def cents_a_piece(*, as_of):
    """{part's id: Decimal cents} of what the books have on an evening, for a hive not yet worked."""
    hundredth = Decimal("0.01")
    return {
        part: (Decimal(cents) / pieces).quantize(hundredth)
        for part, (pieces, cents) in pools(last=as_of).items()
        if pieces > 0
    }


def _became(row):
    if row.target.kind != Location.Kind.STORE:
        return "lost"
    return "held" if row.condition == Condition.HELD else "saved"
