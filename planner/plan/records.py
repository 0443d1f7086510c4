"""What a winter order says: suppliers, lines, reasons, shortages, cautions. Immutable records, nothing computed.

Money is Decimal to the cent, gear whole numbers, days dates; shares are seasons of 100.
json_form.py writes and reads them; report.py makes them; the workbook, pages and commands show them.
"""

import datetime as dt
from dataclasses import dataclass
from decimal import Decimal

from planner.after.records import AfterSection
from planner.beliefs.records import BeliefsSection
from planner.plan.budget_records import BudgetSection, Move
from planner.plan.trial_records import BadYearsSection, TrialSection


@dataclass(frozen=True, kw_only=True)
class PartUnits:
    part: str
    name: str
    unit: str
    units: int


@dataclass(frozen=True, kw_only=True)
class Owned:
    """Pieces of one part the books know on the day of the order. Only `sound`, `spare_on_colonies`
    and `on_order` can be planned with."""

    part: str
    name: str
    sound: int = 0
    on_colonies: int = 0
    spare_on_colonies: int = 0  # of those, beyond the colonies' own sets: free to be used elsewhere
    to_mend: int = 0
    held: int = 0
    on_order: int = 0


@dataclass(frozen=True, kw_only=True)
class Peak:
    """The week in which most is in use at once (or, of what is used up, the whole season's need)."""

    week: int | None  # None: used up over the season
    starts_on: dt.date | None
    words: str  # "late May", "over the season"
    mean: int
    low: int  # nine seasons of ten ask for at least this
    high: int  # nine seasons of ten ask for at most this
    served: int  # the plan puts so many to use, mean
    returned: int  # pieces deadouts give back by then, mean
    yards: tuple[str, ...] = ()  # names, those that ask for most first


@dataclass(frozen=True, kw_only=True)
class Why:
    """A line's reason: the sentences, and the figures they rest on."""

    sentences: tuple[str, ...]
    owned: tuple[Owned, ...]
    peak: Peak | None
    short_in_100: int  # seasons of 100 that run short without this line, the rest of the order bought
    short_words: str  # "late May"; empty when no season is short
    short_yards: tuple[str, ...]
    beliefs: tuple[str, ...]
    moves: tuple[Move, ...] = ()  # one pack more, one fewer; empty where the run did not ask
    otherwise: str = ""  # what the line would be were a belief wrong; empty where no belief was checked

    @property
    def text(self):
        return " ".join(filter(None, (*self.sentences, self.moves_said, *self.beliefs, self.otherwise)))

    @property
    def moves_said(self):
        """Both moves in one sentence: One pack of 5 more costs …, so leave it; one fewer saves …"""
        more, *fewer = self.moves or (None,)
        if more is None:
            return ""
        rest = "".join(f"; one {'more' if move.step > 0 else 'fewer'} {move.said}" for move in fewer)
        return f"{more.head} {more.said}{rest}."

    @property
    def rests_on(self):
        return " ".join(filter(None, (*self.beliefs, self.otherwise)))


@dataclass(frozen=True, kw_only=True)
class PacksAt:
    """So many packs at one price: what a bill multiplies."""

    packs: int
    price: Decimal


@dataclass(frozen=True, kw_only=True)
class Line:
    number: int
    offer: str
    name: str
    packs: int
    parts: tuple[PartUnits, ...]
    price: Decimal  # a pack, its step applied (the mean pack where steps price their own packs only)
    cost: Decimal
    bill: tuple[PacksAt, ...]
    price_note: str
    order_by: dt.date
    order_by_why: str
    due_on: dt.date
    why: Why


@dataclass(frozen=True, kw_only=True)
class SupplierOrder:
    """All that is ordered of one supplier in one week: one purchase order, one fee."""

    supplier: str
    name: str
    period: int
    lines: tuple[Line, ...]
    goods: Decimal
    fee: Decimal
    fee_note: str
    total: Decimal
    order_by: dt.date
    due_on: dt.date


@dataclass(frozen=True, kw_only=True)
class Shortage:
    """A use the season would pay for and the plan leaves out, mean of all seasons."""

    what: str
    wanted: float
    left_out: float
    lost: Decimal  # value of what is left out, a season
    in_100: int  # seasons of 100 in which some is left out
    yards: tuple[str, ...] = ()  # names, those that lose most first


@dataclass(frozen=True, kw_only=True)
class LaterLine:
    """Bought in season once it is seen how the year goes: mean of all seasons."""

    offer: str
    name: str
    units: tuple[PartUnits, ...]
    cost: Decimal
    in_100: int


@dataclass(frozen=True, kw_only=True)
class Requirement:
    """Pieces of one part asked for in each week from the day of the order on, at one yard or (yard "") at all."""

    part: str
    name: str
    unit: str
    yard: str
    yard_name: str
    mean: tuple[float, ...]
    high: tuple[float, ...]  # nine seasons of ten do not ask for more


@dataclass(frozen=True, kw_only=True)
class AssumptionRow:
    key: str
    group: str
    ask: str
    value: str
    unit: str
    default: str
    own: bool  # the keeper's answer, not the default
    source: str


@dataclass(frozen=True, kw_only=True)
class ComputedRow:
    """A figure worked out and never asked."""

    group: str
    name: str
    value: str
    source: str


@dataclass(frozen=True, kw_only=True)
class Caution:
    head: str
    text: str


@dataclass(frozen=True, kw_only=True)
class NoOffer:
    part: str
    name: str
    missing: int
    by: dt.date
    text: str


@dataclass(frozen=True, kw_only=True)
class Rival:
    """Another order judged on the same seasons: what it spends, what it is worth, what this order gains on it."""

    name: str
    how: str
    spend: Decimal
    worth: Decimal
    gain: Decimal
    bad_year: Decimal  # mean of its worst season in twenty
    packs: dict[str, int]


@dataclass(frozen=True, kw_only=True)
class Standing:
    """How good the order is known to be: its worth in the mean season, the proven gap, and its rivals."""

    status: str
    said: str
    worth: Decimal | None
    bad_year: Decimal | None
    gap_share: float | None
    seconds: float
    solver: str
    seasons: int
    rivals: tuple[Rival, ...] = ()
    sentences: tuple[str, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Report:
    day: dt.date
    money: str
    budget: Decimal | None
    spend: Decimal
    later_spend: Decimal
    order_by: dt.date | None
    headline: str
    standing: Standing
    orders: tuple[SupplierOrder, ...] = ()
    shortages: tuple[Shortage, ...] = ()
    later: tuple[LaterLine, ...] = ()
    no_offers: tuple[NoOffer, ...] = ()
    requirement: tuple[Requirement, ...] = ()
    assumptions: tuple[AssumptionRow, ...] = ()
    cautions: tuple[Caution, ...] = ()
    trial: TrialSection | None = None
    bad_years: BadYearsSection | None = None
    beliefs: BeliefsSection | None = None
    budgets: BudgetSection | None = None
    computed: tuple[ComputedRow, ...] = ()
    after: AfterSection | None = None

    @property
    def lines(self):
        return tuple(line for order in self.orders for line in order.lines)
