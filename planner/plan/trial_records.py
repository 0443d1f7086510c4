"""What a trial and the bad years say, in a report: figures rounded to what the seasons tried bear, and sentences.

Money is Decimal. planner.trial makes them; json_form.py writes and reads them; pages, workbook and text show them.
"""

from dataclasses import dataclass
from decimal import Decimal


@dataclass(frozen=True, kw_only=True)
class TrialRow:
    """One order on the fresh seasons. `over` and its span are against the order all are compared with."""

    key: str  # ours, yours, rule, mean, nothing, foresight
    name: str
    how: str
    spend: Decimal | None
    worth: Decimal  # mean
    worth_reach: Decimal  # 19 times of 20 the true mean lies within
    bad_year: Decimal  # mean of the worst season in twenty
    over: Decimal
    over_reach: Decimal
    low: Decimal  # 19 seasons of 20 lie between
    high: Decimal
    seasons: int


@dataclass(frozen=True, kw_only=True)
class YardSection:
    """This order's mean worth where boxes and covers lie at yards, beside the pool's; None where it was not judged."""

    seasons: int
    pooled: Decimal | None
    by_yard: Decimal | None
    gap_share: float | None  # by how much the pool flatters it, as a share of the worth by yard
    said: str


@dataclass(frozen=True, kw_only=True)
class TrialSection:
    """Rows from the one that earns least; `against` names the row all are compared with."""

    seasons: int
    against: str  # its key
    against_name: str
    rows: tuple[TrialRow, ...]
    sentences: tuple[str, ...]
    gap_most: Decimal | None  # the best order there could be is worth at most that much more, 19 times of 20
    gap_share: float | None  # the same as a share of this order's worth
    by_yard: YardSection | None = None

    @property
    def ours(self):
        return next(row for row in self.rows if row.key == "ours")


@dataclass(frozen=True, kw_only=True)
class BadYearsPoint:
    """The best order at one weight on bad years, judged on the seasons planned with."""

    weight: float
    spend: Decimal
    mean: Decimal
    bad_years: Decimal  # mean of the worst share of seasons
    chosen: bool


@dataclass(frozen=True, kw_only=True)
class BadYearsSection:
    """The curve, from no weight on bad years to nearly all."""

    share: float
    seasons: int
    points: tuple[BadYearsPoint, ...]
    sentences: tuple[str, ...]
