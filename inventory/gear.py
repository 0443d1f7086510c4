"""The words of gear: kinds, depths, states of a frame, conditions. Pure: no table, no clock.

Gives the closed lists that models, sheets and planner share, and the two records Gear and Tally.
"""

from dataclasses import dataclass
from enum import StrEnum


class Kind(StrEnum):
    BOX = "box"
    FRAME = "frame"  # bare, with foundation, or drawn: see Comb
    FOUNDATION = "foundation"  # the loose sheet
    FLOOR = "floor"
    INNER_COVER = "inner cover"
    COVER = "cover"
    FEEDER = "feeder"
    EXCLUDER = "excluder"
    REDUCER = "reducer"
    GUARD = "guard"
    STAND = "stand"
    NUC_BOX = "nuc box"
    FEED = "feed"
    CONSUMABLE = "consumable"


class Depth(StrEnum):
    DEEP = "deep"
    MEDIUM = "medium"
    SHALLOW = "shallow"


class Comb(StrEnum):
    """The state of a frame."""

    BARE = "bare"
    FOUNDATION = "foundation"
    DRAWN = "drawn"


class CombUse(StrEnum):
    BROOD = "brood"
    HONEY = "honey"


class Condition(StrEnum):
    SOUND = "sound"
    TO_MEND = "to mend"
    HELD = "held back"


class Reason(StrEnum):
    """Why gear moved. The list is closed: a new reason is a decision, not a typing."""

    OPENING = "opening stock"
    RECEIVED = "received"
    MOVED = "moved"
    PLACED = "placed on a colony"
    TAKEN_OFF = "taken off a colony"
    ASSEMBLED = "assembled"
    DRAWN = "drawn by bees"
    SALVAGED = "salvaged"
    HELD = "held back"
    RELEASED = "released"
    MENDED = "mended"
    BROKEN = "broken"
    SCRAPPED = "scrapped"
    BURNT = "burnt"
    SOLD = "sold"
    LENT = "lent"
    RETURNED = "got back"
    FED = "fed"
    USED = "used up"
    LOST = "lost"
    FOUND = "found"
    CORRECTED = "corrected"


@dataclass(frozen=True, kw_only=True)
class Gear:
    """One kind of gear in one condition: what a holding is a quantity of."""

    part: str
    condition: Condition = Condition.SOUND


@dataclass(frozen=True, kw_only=True)
class Tally:
    """A whole number of pieces of one gear, zero or more. Refuses to be a yes or no: compare its quantity."""

    gear: Gear
    quantity: int

    def __post_init__(self):
        if not isinstance(self.quantity, int) or self.quantity < 0:
            raise ValueError(
                f"{self.gear.part}: a tally is a whole number, zero or more, got {self.quantity!r}"
            )

    def __bool__(self):
        raise TypeError("a tally is not a yes or no: compare its quantity")
