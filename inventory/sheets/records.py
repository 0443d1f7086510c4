"""What a keeper's workbook says, as plain records: one per row, and the whole of it as a Sheet.

Given by reading.py, written by template.py, posted by inventory/loading.py. Yards, parts, sets and
suppliers are named by code; money Decimal to the cent, gear whole numbers, weeks ISO week numbers. `row` is where it
stands on its sheet, 0 where it was never on one; two records alike but for it are the same.
"""

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal

from inventory.gear import Condition


@dataclass(frozen=True, kw_only=True)
class KeeperRow:
    name: str
    address: str = ""
    region: str = ""  # north, middle, south, or not said
    money: str = "USD"
    truck_lb: int = 1000
    row: int = field(default=0, compare=False)


@dataclass(frozen=True, kw_only=True)
class YardRow:
    code: str
    name: str
    is_shed: bool = False
    region: str = ""
    stands: int = 0
    drive_minutes: int = 0
    miles: Decimal = Decimal(0)
    gate: str = ""
    emergency: str = ""
    access: str = ""
    visit_every_days: int | None = None
    row: int = field(default=0, compare=False)


@dataclass(frozen=True, kw_only=True)
class FlowRow:
    yard: str
    name: str
    first_week: int
    last_week: int
    gain_lb: Decimal
    spread: Decimal = Decimal("0.35")
    row: int = field(default=0, compare=False)


@dataclass(frozen=True, kw_only=True)
class ColonyRow:
    """`started_on` None: not known, the day of loading stands for it. `supers` are drawn ones."""

    tag: str
    yard: str
    hive_set: str
    strength: str = "fair"
    origin: str = "overwintered"
    started_on: dt.date | None = None
    mother: str = ""
    supers: int = 0
    super_depth: str = "medium"
    row: int = field(default=0, compare=False)


@dataclass(frozen=True, kw_only=True)
class GearRow:
    """So many pieces lie in a yard's store. What stands on colonies is told by their sets instead."""

    yard: str
    part: str
    condition: str = Condition.SOUND.value
    quantity: int
    row: int = field(default=0, compare=False)


@dataclass(frozen=True, kw_only=True)
class SupplierRow:
    code: str
    name: str
    order_fee: Decimal = Decimal(0)
    free_from: Decimal | None = None
    lead_weeks: int = 2
    complete: bool = False  # what its list has no more is closed
    row: int = field(default=0, compare=False)


@dataclass(frozen=True, kw_only=True)
class OfferRow:
    """A pack of one part or a kit of several. `prices` are (from packs, price a pack), the first from 1."""

    code: str
    supplier: str
    name: str
    parts: Mapping[str, int]  # part code -> units in a pack
    prices: tuple[tuple[int, Decimal], ...]
    price_rule: str = "all_units"
    open_from: dt.date | None = None
    open_until: dt.date | None = None
    lead_weeks: int | None = None  # None: the supplier's
    max_packs: int | None = None
    row: int = field(default=0, compare=False)


@dataclass(frozen=True, kw_only=True)
class WinterRow:
    """Colonies in and out of a winter, of a yard or, without one, of them all. `autumn`: the year it began."""

    autumn: int
    yard: str = ""
    went_in: int
    came_out: int
    row: int = field(default=0, compare=False)


@dataclass(frozen=True, kw_only=True)
class CountedRow:
    """So many pieces were counted in the store, or on the colony of that tag."""

    tag: str = ""
    part: str
    condition: str = Condition.SOUND.value
    quantity: int
    row: int = field(default=0, compare=False)


@dataclass(frozen=True, kw_only=True)
class CountRow:
    """What was counted at one yard or the shed on the evening of a day."""

    yard: str
    day: dt.date
    note: str = ""
    lines: tuple[CountedRow, ...] = ()
    row: int = field(default=0, compare=False)


@dataclass(frozen=True, kw_only=True)
class LineToCount:
    """A part that may lie in the store or on a colony. `booked` None: the count is blind."""

    tag: str = ""
    part: str
    condition: str = Condition.SOUND.value
    booked: int | None = None


@dataclass(frozen=True, kw_only=True)
class ToCount:
    """A place and what to look for there; `day` None: to be written down when it is counted."""

    yard: str
    day: dt.date | None = None
    lines: tuple[LineToCount, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Sheet:
    """All a workbook says. `keeper` None: the sheet is silent, the books' own keeper stays."""

    keeper: KeeperRow | None = None
    yards: tuple[YardRow, ...] = ()
    flows: tuple[FlowRow, ...] = ()
    colonies: tuple[ColonyRow, ...] = ()
    gear: tuple[GearRow, ...] = ()
    suppliers: tuple[SupplierRow, ...] = ()
    offers: tuple[OfferRow, ...] = ()
    winters: tuple[WinterRow, ...] = ()
    counts: tuple[CountRow, ...] = ()


@dataclass(frozen=True, kw_only=True)
class KnownSet:
    name: str
    width: int
    is_nuc: bool = False


@dataclass(frozen=True, kw_only=True)
class Known:
    """What the books know already, by code; a workbook may name it without repeating it."""

    parts: Mapping[str, str] = field(default_factory=dict)  # code -> name
    units: Mapping[str, str] = field(default_factory=dict)  # code -> what it is counted in
    sets: Mapping[str, KnownSet] = field(default_factory=dict)
    super_boxes: frozenset[tuple[str, int]] = frozenset()  # (depth, width) a drawn super can be made of
    yards: Mapping[str, str] = field(default_factory=dict)  # code -> name
    stands: Mapping[str, int] = field(default_factory=dict)  # yard code -> stands
    shed: str = ""
    suppliers: Mapping[str, str] = field(default_factory=dict)
    offers: Mapping[str, tuple[str, str]] = field(default_factory=dict)  # code -> (supplier code, name)
    colonies: Mapping[str, str] = field(default_factory=dict)  # tag -> yard code, living ones
    ended: frozenset[str] = frozenset()  # tags of colonies no more
    has_keeper: bool = False
