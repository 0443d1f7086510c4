"""The sizing problem's records: what may be bought, made, hauled, and what the scenarios ask for.

Takes plain values; gives immutable records, one a JSON object of the problem file (see reading.py, writing.py).
Periods count from 0. Money and hours are floats here: the programme's numbers. Validated by faults.py, not here.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True, kw_only=True)
class Part:
    code: str
    end_value: float = 0.0  # money a unit owned and not spent after the last period
    holding_cost: tuple[float, ...] | float = 0.0  # money a unit idle at the end of a period
    weight_lb: float = 0.0


@dataclass(frozen=True, kw_only=True)
class Stock:
    part: str
    location: str
    quantity: float
    period: int = 0


@dataclass(frozen=True, kw_only=True)
class Supplier:
    code: str
    order_fee: tuple[float, ...] | float = 0.0
    free_from: float | None = None


@dataclass(frozen=True, kw_only=True)
class PriceStep:
    from_packs: int
    price: float


@dataclass(frozen=True, kw_only=True)
class Offer:
    code: str
    supplier: str
    parts: Mapping[str, float]
    prices: tuple[PriceStep, ...]
    location: str | None = None  # None: the problem's first location
    price_rule: str = "all_units"  # or "incremental"
    order_periods: tuple[int, ...] = (0,)
    lead_periods: int = 0
    max_packs: float | None = None
    work_minutes: float = 0.0
    whole: bool | None = None  # None: True for now, False for later
    when: str = "now"  # or "later"

    @property
    def is_whole(self):
        return self.when == "now" if self.whole is None else self.whole


@dataclass(frozen=True, kw_only=True)
class Recipe:
    code: str
    takes: Mapping[str, float]
    makes: Mapping[str, float]
    location: str | None = None
    work_minutes: float = 0.0
    lead_periods: int = 0
    cost: float = 0.0


@dataclass(frozen=True, kw_only=True)
class Work:
    minutes_per_period: tuple[float, ...] | None = None
    cost_per_hour: float = 0.0


@dataclass(frozen=True, kw_only=True)
class BadYears:
    weight: float = 0.0
    share: float = 0.1


@dataclass(frozen=True, kw_only=True)
class Haul:
    source: str  # "from" in the file
    target: str  # "to" in the file
    cost_per_unit: float = 0.0
    cost_per_lb: float = 0.0
    trip_cost: float = 0.0
    trip_lb: float | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Use:
    """Gear wanted at a place from week `first` to `last`, by up to `units`, worth `value` each."""

    code: str
    location: str
    first: int
    last: int
    units: float
    value: float
    must: bool = False
    keeps: Mapping[str, float] = field(default_factory=dict)
    spends: Mapping[str, float] = field(default_factory=dict)
    needs_use: str | None = None
    per: float = 1.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Arrival:
    part: str
    location: str
    period: int
    quantity: float


@dataclass(frozen=True, kw_only=True)
class Scenario:
    code: str
    probability: float
    uses: tuple[Use, ...] = ()
    arrivals: tuple[Arrival, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Problem:
    periods: int
    parts: tuple[Part, ...]
    locations: tuple[str, ...]
    scenarios: tuple[Scenario, ...]
    money: str = "USD"
    stock: tuple[Stock, ...] = ()
    suppliers: tuple[Supplier, ...] = ()
    offers: tuple[Offer, ...] = ()
    recipes: tuple[Recipe, ...] = ()
    work: Work = Work()
    whole_uses: bool = False
    bad_years: BadYears = BadYears()
    budget: float | None = None
    later_budget: float | None = None
    hauls: tuple[Haul, ...] = ()
