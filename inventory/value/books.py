"""A stretch of the books in pieces and money: opening + in − out = closing, by part and in all. Pure.

Takes Posted lines and two days; gives Books. Closing is what the next stretch opens with.
"""

import datetime as dt
from collections import defaultdict
from dataclasses import dataclass, field
from decimal import Decimal

from inventory.value.records import money


@dataclass(frozen=True, kw_only=True)
class Amount:
    """Pieces and their cents. Pieces of different parts are added in sums only to show that they agree."""

    pieces: int = 0
    cents: int = 0

    @property
    def value(self):
        return money(self.cents)

    @property
    def average(self):
        """What a piece is worth, to the hundredth of a cent."""
        if not self.pieces:
            return Decimal(0)
        return (money(self.cents) / self.pieces).quantize(Decimal("0.0001"))

    def __add__(self, other):
        return Amount(pieces=self.pieces + other.pieces, cents=self.cents + other.cents)


ZERO = Amount()


@dataclass(frozen=True, kw_only=True)
class PartBooks:
    """One part; `came` and `left` by why, both counted above zero."""

    part: str
    opening: Amount
    came: dict = field(default_factory=dict)
    left: dict = field(default_factory=dict)

    @property
    def all_in(self):
        return sum(self.came.values(), ZERO)

    @property
    def all_out(self):
        return sum(self.left.values(), ZERO)

    @property
    def closing(self):
        out = self.all_out
        return self.opening + self.all_in + Amount(pieces=-out.pieces, cents=-out.cents)

    @property
    def moved(self):
        return bool(self.came or self.left)


@dataclass(frozen=True, kw_only=True)
class Books:
    """All parts from one day to another, both counted in."""

    first: dt.date
    last: dt.date
    parts: tuple[PartBooks, ...]

    @property
    def whole(self):
        """All parts as one."""
        return PartBooks(
            part="",
            opening=sum((row.opening for row in self.parts), ZERO),
            came=_summed(row.came for row in self.parts),
            left=_summed(row.left for row in self.parts),
        )


def books_of(posted, *, first, last):
    """The books from `first` to `last`, parts in alphabetic order; parts of which nothing was ever there left out."""
    opening: dict[str, Amount] = defaultdict(Amount)
    came: dict[str, dict] = defaultdict(lambda: defaultdict(Amount))
    left: dict[str, dict] = defaultdict(lambda: defaultdict(Amount))
    for line in posted:
        if line.day > last:
            continue
        if line.day < first:
            opening[line.part] += Amount(pieces=line.pieces, cents=line.cents)
        elif line.pieces > 0:
            came[line.part][line.why] += Amount(pieces=line.pieces, cents=line.cents)
        else:
            left[line.part][line.why] += Amount(pieces=-line.pieces, cents=-line.cents)
    rows = [
        PartBooks(part=part, opening=opening[part], came=dict(came[part]), left=dict(left[part]))
        for part in sorted({*opening, *came, *left})
    ]
    kept = [row for row in rows if row.moved or row.opening != ZERO]
    return Books(first=first, last=last, parts=tuple(kept))


def value_by_part(posted, *, as_of):
    """{part: Amount} on the evening of a day; parts of which nothing is there left out."""
    sums: dict[str, Amount] = defaultdict(Amount)
    for line in posted:
        if line.day <= as_of:
            sums[line.part] += Amount(pieces=line.pieces, cents=line.cents)
    return {part: amount for part, amount in sorted(sums.items()) if amount != ZERO}


def _summed(mappings):
    sums: dict[str, Amount] = defaultdict(Amount)
    for mapping in mappings:
        for why, amount in mapping.items():
            sums[why] += amount
    return dict(sums)
