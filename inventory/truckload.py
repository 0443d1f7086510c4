"""What a load weighs and how much of the truck's bed it fills. Pure: no table, no clock.

Takes pieces with how many of each, and the boxes that are full of honey; gives lb, cubic feet and trips. Outer
dimensions are the catalogue's; what it does not tell, how gear nests and the room between stacks are judgement.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal

from inventory.gear import Depth, Kind

CUBIC_IN_A_FOOT = 12**3
SPACING = Decimal("1.1")  # judgement: straps, corners and gaps take a tenth more than the gear itself
FLAT = Decimal("0.25")  # judgement: a box in pieces packs into a quarter of its outside
BOXES = (Kind.BOX, Kind.NUC_BOX)
FRAMES_IN = {8: 8, 10: 10, 5: 5}  # frames ride in boxes of their depth, as many as the box is wide
# A full super with box and combs, ten frames wide, upper figure of common extension teaching (80 to 90, 50 to 60,
# 35 to 40 lb), from memory. Narrower boxes in proportion.
FULL_LB = {Depth.DEEP: Decimal(90), Depth.MEDIUM: Decimal(60), Depth.SHALLOW: Decimal(40)}
# (length, width over the box's, height) in inches where the catalogue tells none: judgement, after common woodenware
LENGTH = Decimal("19.875")
BOX_WIDTH = {10: Decimal("16.25"), 8: Decimal("13.875"), 5: Decimal(9)}
WIDEST = BOX_WIDTH[10]
DEPTH_HEIGHT: dict[str, Decimal] = {
    Depth.DEEP: Decimal("9.625"),
    Depth.MEDIUM: Decimal("6.625"),
    Depth.SHALLOW: Decimal("5.6875"),
}
HEIGHT = {
    Kind.BOX: Decimal("9.625"),
    Kind.FRAME: Decimal("9.125"),
    Kind.FOUNDATION: Decimal("8.5"),
    Kind.FLOOR: Decimal("2"),
    Kind.INNER_COVER: Decimal("1"),
    Kind.COVER: Decimal("2.5"),
    Kind.FEEDER: Decimal("3.5"),
    Kind.EXCLUDER: Decimal("0.625"),
    Kind.REDUCER: Decimal("0.75"),
    Kind.GUARD: Decimal("0.5"),
    Kind.STAND: Decimal(18),
    Kind.NUC_BOX: Decimal(12),
}
WIDTH = {
    Kind.FRAME: Decimal("1.375"),
    Kind.FOUNDATION: Decimal("0.125"),
    Kind.REDUCER: Decimal("0.75"),
    Kind.GUARD: Decimal(2),
}
PER_LB = Decimal(35)  # cubic inches of a pound of sugar or patties in bags: about 50 lb a cubic foot
PER_UNIT = {
    "quart": Decimal(75),
    "bottle": Decimal(60),
    "box": Decimal(60),
    "set": Decimal(12),
    "dose": Decimal(20),
}
PER_PIECE = Decimal(60)  # of what is used up: a pound jar and the like
PER_PIECE_LB = Decimal(600)  # a pound of empty gear that is light for its size, as a bucket is


@dataclass(frozen=True, kw_only=True)
class Piece:
    """One piece of gear as a load sees it. Dimensions in inches, None where the catalogue tells none."""

    kind: Kind
    lb: Decimal
    depth: str = ""
    width: int | None = None
    flat: bool = False
    unit: str = "piece"
    length_in: Decimal | None = None
    width_in: Decimal | None = None
    height_in: Decimal | None = None

    @property
    def cubic_in(self):
        """Outside of one piece that rides by itself."""
        if self.kind in (Kind.FEED, Kind.CONSUMABLE):
            return self._of_what_is_used_up()
        across = WIDTH.get(self.kind) or BOX_WIDTH.get(self.width or 0, WIDEST)
        high = DEPTH_HEIGHT.get(self.depth, HEIGHT[self.kind]) if self.kind == Kind.BOX else HEIGHT[self.kind]
        room = (self.length_in or LENGTH) * (self.width_in or across) * (self.height_in or high)
        return room * FLAT if self.flat and self.kind == Kind.BOX else room

    def _of_what_is_used_up(self):
        if self.unit == "lb":
            return PER_LB
        return PER_UNIT.get(self.unit, PER_PIECE if self.lb < 1 else self.lb * PER_PIECE_LB)

    @property
    def holds(self):
        """How many frames of its depth ride inside."""
        return 0 if self.flat or self.kind not in BOXES else FRAMES_IN.get(self.width or 0, 0)

    @property
    def rides(self):
        """Whether it can ride inside a box of its depth."""
        return self.kind == Kind.FRAME and not self.flat

    def honey_lb(self, comb_lb):
        """Honey in one box of it that is full, the weight of box and combs taken off; `comb_lb` of one comb."""
        if not self.holds or self.depth not in FULL_LB:
            return Decimal(0)
        full = FULL_LB[Depth(self.depth)] * self.holds / 10
        return max(Decimal(0), full - self.lb - self.holds * comb_lb)


@dataclass(frozen=True, kw_only=True)
class Load:
    """What is on the truck: pounds, of them honey, and cubic feet with the room between."""

    lb: Decimal
    cubic_ft: Decimal
    honey_lb: Decimal = Decimal(0)

    def trips(self, truck_lb, truck_cubic_ft):
        """How often the truck has to go: the tighter of weight and room. None at all for no load."""
        return max(math.ceil(self.lb / truck_lb), math.ceil(self.cubic_ft / truck_cubic_ft))


def load_of(pieces: Iterable[tuple[Piece, int]], *, honey_lb=Decimal(0)):
    """The load of [(piece, how many)]: frames ride in the boxes of their depth as far as there are boxes."""
    pieces = list(pieces)
    seats: dict[str, int] = {}
    for piece, number in pieces:
        seats[piece.depth] = seats.get(piece.depth, 0) + piece.holds * number
    room = Decimal(0)
    for piece, number in pieces:
        inside = min(number, seats.get(piece.depth, 0)) if piece.rides else 0
        if inside:
            seats[piece.depth] -= inside
        room += piece.cubic_in * (number - inside)
    weight = sum((piece.lb * number for piece, number in pieces), Decimal(0))
    return Load(lb=weight + honey_lb, cubic_ft=room * SPACING / CUBIC_IN_A_FOOT, honey_lb=honey_lb)
