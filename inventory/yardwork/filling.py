"""What goes into boxes as they go on: drawn comb as far as it reaches, then frames with foundation. Pure.

Takes how many boxes each hive gets and what the store has; gives the frames for each hive. What the store lacks
by the book is given all the same: the hand holds it, and the books call it found.
"""

from dataclasses import dataclass
from enum import StrEnum


class Fill(StrEnum):
    """What the keeper puts in."""

    STORE = "store"  # drawn comb first, else foundation, as the store has them
    DRAWN = "drawn"
    FOUNDATION = "foundation"


@dataclass(frozen=True, kw_only=True)
class Frames:
    """The frames of one hive's new boxes."""

    drawn: int = 0
    foundation: int = 0


def filled(boxes, *, drawn, foundation, combs, frames, fill=Fill.STORE):
    """Frames for each of the hives that get so many boxes: `combs` drawn ones, else `frames` with foundation, a box.

    `drawn` and `foundation` are what the store has. A box is of one kind where that can be, mixed before the store
    is overdrawn; beyond that it is of foundation, unless the store has drawn comb alone.
    """
    beyond = Fill.DRAWN if drawn and not foundation else Fill.FOUNDATION
    given = []
    for number in boxes:
        sums = [0, 0]
        for _box in range(number):
            one = _one_box(drawn, foundation, combs, frames, fill, beyond)
            sums = [sums[0] + one.drawn, sums[1] + one.foundation]
            drawn, foundation = max(0, drawn - one.drawn), max(0, foundation - one.foundation)
        given.append(Frames(drawn=sums[0], foundation=sums[1]))
    return given


def _one_box(drawn, foundation, combs, frames, fill, beyond):
    of_comb, of_foundation = Frames(drawn=combs), Frames(foundation=frames)
    if fill != Fill.STORE:
        return of_comb if fill == Fill.DRAWN else of_foundation
    if drawn >= combs:
        return of_comb
    if foundation >= frames:
        return of_foundation
    if drawn + foundation >= frames:
        return Frames(drawn=drawn, foundation=frames - drawn)
    return of_comb if beyond == Fill.DRAWN else of_foundation
