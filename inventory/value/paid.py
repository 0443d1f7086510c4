"""What a receipt cost, piece by piece: the invoice's lines and shipping, less what was credited. Pure.

Takes what came with what was billed or planned for it; gives cents for each kind of goods, to the cent. Shipping
is borne in proportion to value; a credit lowers first what was thrown away, then what is to mend, then the rest.
"""

from dataclasses import dataclass

from inventory.value.spread import spread


@dataclass(frozen=True, kw_only=True)
class Goods:
    """Pieces of one part that came one way. `weight`: what they are worth beside others of their line;
    `broken`: 2 thrown away, 1 to mend, 0 sound."""

    key: str
    part: str
    pieces: int
    weight: int = 0
    broken: int = 0


@dataclass(frozen=True, kw_only=True)
class Billed:
    """One line of the invoice, or what was planned for it: cents for these goods together."""

    goods: tuple[Goods, ...]
    cents: int
    credits: tuple[tuple[str, int], ...] = ()  # (part, cents)


@dataclass(frozen=True, kw_only=True)
class Delivery:
    lines: tuple[Billed, ...]
    shipping_cents: int = 0


def priced(delivery):
    """{key of the goods: cents}; the cents add up to lines and shipping less credits, never below zero."""
    shipping = spread(delivery.shipping_cents, [line.cents for line in delivery.lines])
    cents = {}
    for line, freight in zip(delivery.lines, shipping, strict=True):
        shares = _shares(line.cents, line.goods)
        freights = _shares(freight, line.goods) if not any(shares) else spread(freight, shares)
        for goods, share, carried in zip(line.goods, shares, freights, strict=True):
            cents[goods.key] = share + carried
        for part, credit in line.credits:
            _lower(cents, line.goods, part, credit)
    return cents


def _shares(total, goods):
    weights = [one.weight for one in goods]
    return spread(total, weights if any(weights) else [one.pieces for one in goods])


def _lower(cents, goods, part, credit):
    """Takes a credit off the claimed part's broken pieces first, off the rest of the line where it is larger."""
    for one in sorted(goods, key=lambda one: (one.part != part, -one.broken)):
        off = min(credit, cents[one.key])
        cents[one.key] -= off
        credit -= off
