"""What the books say on the day of the order, as plain records. Pure.

Given by intake.py (the only reader of other packages' tables) to projection, requirement and plan.
Weeks are ISO week numbers, weights lb, money Decimal, gear whole numbers.
"""

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from functools import cached_property


@dataclass(frozen=True, kw_only=True)
class WindowFacts:
    """A flow: ISO weeks first..last (first > last wraps over the new year); gain of a full colony, mean year."""

    name: str
    first_week: int
    last_week: int
    gain_lb: float
    spread: float


@dataclass(frozen=True, kw_only=True)
class YardFacts:
    code: str
    name: str
    stands: int
    drive_minutes: int
    miles: float
    windows: tuple[WindowFacts, ...] = ()
    visit_every_days: int | None = None
    region: str = ""


@dataclass(frozen=True, kw_only=True)
class SetFacts:
    """A hive set and the whole gear of a colony in it (frames drawn), by part code."""

    code: str
    name: str
    width: int
    boxes: Mapping[str, int]  # depth -> number of brood boxes
    gear: Mapping[str, int]  # part code -> pieces
    is_nuc: bool = False


@dataclass(frozen=True, kw_only=True)
class ColonyGroup:
    """Living colonies of one yard, set and strength, and all the gear the book says they hold together."""

    yard: str
    hive_set: str
    strength: str  # strong, fair, weak
    colonies: int
    gear: Mapping[str, int] = field(default_factory=dict)


@dataclass(frozen=True, kw_only=True)
class PartFacts:
    code: str
    name: str
    kind: str
    depth: str = ""
    width: int | None = None
    comb: str = ""
    comb_use: str = ""
    treated: bool = False
    flat: bool = False
    unit: str = "piece"
    weight_lb: float = 0.0
    list_price: Decimal = Decimal(0)
    years_of_life: int = 10
    length_in: Decimal | None = None  # outside, where the catalogue tells it
    width_in: Decimal | None = None
    height_in: Decimal | None = None


@dataclass(frozen=True, kw_only=True)
class StockLine:
    """Pieces in a store. Only sound ones can be planned with; the others explain themselves in reasons."""

    part: str
    yard: str
    condition: str
    quantity: int


@dataclass(frozen=True, kw_only=True)
class OnOrder:
    part: str
    quantity: int
    due: dt.date
    reference: str


@dataclass(frozen=True, kw_only=True)
class SupplierFacts:
    code: str
    name: str
    order_fee: Decimal = Decimal(0)
    free_from: Decimal | None = None
    lead_weeks: int = 2


@dataclass(frozen=True, kw_only=True)
class OfferFacts:
    code: str
    supplier: str
    name: str
    parts: Mapping[str, int]
    prices: tuple[tuple[int, Decimal], ...]  # (from packs, price a pack)
    price_rule: str = "all_units"
    open_from: dt.date | None = None
    open_until: dt.date | None = None
    lead_weeks: int = 2
    max_packs: int | None = None


@dataclass(frozen=True, kw_only=True)
class RecipeFacts:
    code: str
    name: str
    takes: Mapping[str, int]
    makes: Mapping[str, int]
    minutes: float


@dataclass(frozen=True, kw_only=True)
class SoFar:
    """What the books say of the season up to `day`, where it began before: living colonies on its first day, nucs sold
    and splits made since. `dead`: colonies found dead in the year up to the day, by day."""

    colonies_begun: int | None = None
    splits_made: int = 0
    nucs_sold: int = 0
    dead: tuple[tuple[dt.date, int], ...] = ()


@dataclass(frozen=True, kw_only=True)
class Operation:
    """All of it: what one keeper has, where, and what may be bought, as of `day`."""

    day: dt.date
    money: str
    region: str
    shed: str  # code of the yard that is the shed
    yards: tuple[YardFacts, ...]
    sets: tuple[SetFacts, ...]
    colonies: tuple[ColonyGroup, ...]
    parts: tuple[PartFacts, ...]
    stock: tuple[StockLine, ...] = ()
    on_order: tuple[OnOrder, ...] = ()
    suppliers: tuple[SupplierFacts, ...] = ()
    offers: tuple[OfferFacts, ...] = ()
    recipes: tuple[RecipeFacts, ...] = ()
    truck_lb: int = 1000
    truck_cubic_ft: int = 50
    so_far: SoFar = SoFar()
    winters: tuple[tuple[int, int], ...] = ()  # colonies in and out of past winters, as the books were told
    home: str = ""  # code of the hive set new hives are supposed to be; usually what most stand in

    @cached_property
    def sets_by_code(self):
        return {facts.code: facts for facts in self.sets}

    @cached_property
    def yards_by_code(self):
        return {yard.code: yard for yard in self.yards}

    @cached_property
    def parts_by_code(self):
        return {part.code: part for part in self.parts}

    @cached_property
    def worked_out(self):
        """What a stage works out from this record alone and needs again in every scenario, under a key of its own."""
        return {}

    def part(self, code):
        """The part of that code; KeyError if the catalogue has none."""
        for part in self.parts:
            if part.code == code:
                return part
        raise KeyError(code)

    def find_part(self, *, kind, depth="", width=None, comb="", comb_use="", flat=False):
        """The one untreated part with these traits, or None."""
        wanted = (kind, depth, width, comb, comb_use, flat)
        for part in self.parts:
            traits = (part.kind, part.depth, part.width, part.comb, part.comb_use, part.flat)
            if traits == wanted and not part.treated:
                return part
        return None
