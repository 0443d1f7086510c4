"""What fits on the truck: lines of pieces weighed and measured as the books' own loads are.

Takes parts with how many of each; gives pounds and cubic feet, and whether they fit. Frames ride in
boxes of their depth, full boxes weigh their honey.
"""

from collections import defaultdict
from dataclasses import dataclass
from decimal import Decimal

from inventory.gear import Kind
from inventory.truckload import Piece, load_of
from planner.after.records import Carried, Leg

SYRUP_LB = {
    "syrup-1:1": Decimal("10.26"),
    "syrup-2:1": Decimal("11.07"),
}  # a gallon, at 20 C, CRC and NBS tables
SYRUP_NAMES = {"syrup-1:1": "light syrup, 1:1 by weight", "syrup-2:1": "heavy syrup, 2:1 by weight"}
GALLON_CUBIC_IN = Decimal(231)


@dataclass(frozen=True, kw_only=True)
class Syrup:
    """A gallon in its jug, as a load sees it."""

    lb: Decimal
    cubic_in: Decimal = GALLON_CUBIC_IN
    holds: int = 0
    rides: bool = False
    depth: str = ""


class Truck:
    """The keeper's truck and what each part is on it."""

    def __init__(self, operation):
        self.lb, self.cubic_ft = Decimal(operation.truck_lb), Decimal(operation.truck_cubic_ft)
        self.parts = operation.parts_by_code
        self._pieces: dict = {code: Syrup(lb=lb) for code, lb in SYRUP_LB.items()}
        self.combs = {
            part.depth: Decimal(repr(part.weight_lb))
            for part in operation.parts
            if part.comb == "drawn" and part.comb_use == "honey" and not part.treated
        }

    def piece(self, code):
        if code not in self._pieces:
            part = self.parts[code]
            self._pieces[code] = Piece(
                kind=Kind(part.kind),
                lb=Decimal(repr(part.weight_lb)),
                depth=part.depth,
                width=part.width,
                flat=part.flat,
                unit=part.unit,
                length_in=part.length_in,
                width_in=part.width_in,
                height_in=part.height_in,
            )
        return self._pieces[code]

    def load(self, cargo):
        """The load of {(part, full): pieces}."""
        honey = sum(
            (self._honey(part) * pieces for (part, full), pieces in cargo.items() if full and pieces),
            Decimal(0),
        )
        rows = [(self.piece(part), pieces) for (part, _full), pieces in cargo.items() if pieces]
        return load_of(rows, honey_lb=honey)

    def _honey(self, part):
        piece = self.piece(part)
        return (
            piece.honey_lb(self.combs.get(piece.depth, Decimal(0)))
            if isinstance(piece, Piece)
            else Decimal(0)
        )

    def takes(self, cargo):
        load = self.load(cargo)
        return load.lb <= self.lb and load.cubic_ft <= self.cubic_ft

    def leg(self, cargo):
        """The cargo as the report keeps it."""
        load = self.load(cargo)
        merged: dict = defaultdict(int)
        for key, pieces in cargo.items():
            merged[key] += pieces
        carried = tuple(
            Carried(part=part, name=self.name(part), unit=self.unit(part), pieces=pieces, full=full)
            for (part, full), pieces in sorted(merged.items(), key=lambda item: self.rank(item[0]))
            if pieces
        )
        return Leg(carried=carried, lb=round(load.lb), cubic_ft=round(float(load.cubic_ft), 1))

    def rank(self, key):
        """Boxes first, then what rides in them, then the rest; syrup last."""
        kinds: list[str] = [Kind.BOX, Kind.NUC_BOX, Kind.FRAME]
        kind: str = self.parts[key[0]].kind if key[0] in self.parts else "syrup"
        return kinds.index(kind) if kind in kinds else len(kinds) + (kind == "syrup"), key

    def name(self, part):
        return SYRUP_NAMES.get(part) or self.parts[part].name

    def full_name(self, key):
        """The piece and whether it is full of honey."""
        return f"{self.name(key[0])}{', full of honey' if key[1] else ''}"

    def unit(self, part):
        return "gallon" if part in SYRUP_NAMES else self.parts[part].unit
