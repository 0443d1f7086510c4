"""Records of the questions next door to a solved order: a pack more or fewer, other budgets, less money.

Takes plain values; money is float here, in the problem's money. Solves nothing.
"""

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True, kw_only=True)
class Moved:
    """One here-and-now line by one pack more or fewer, all other lines held, every scenario's recourse re-solved."""

    offer: str
    period: int
    packs: float  # as ordered now
    step: int  # 1 or -1
    cost_change: float  # packs and fees; above 0: dearer
    worth_change: float  # of the objective, cost taken off
    over_budget: float  # money by which the moved order breaks the budget; 0 where it keeps it
    served: bool  # False: some must-use cannot be served, the worth is not known
    limit: str  # "most": no more may be ordered, "least": there is no pack to take off; both without figures


@dataclass(frozen=True, kw_only=True)
class BudgetPoint:
    """The best order known at a budget."""

    budget: float
    spend: float
    objective: float
    bound: float  # no order within this budget is worth more
    fractions: float  # objective where packs, price steps and fees may be fractions
    packs: Mapping[tuple[str, int], float]
    settled: bool = True  # False: the time was too short to find out whether a better order is to be had
    poor: bool = (
        False  # True: of what could be earned too much may be missed to call it what the budget earns
    )


@dataclass(frozen=True, kw_only=True)
class LessMoney:
    budget: float
    lost: float  # objective lost against the budget now
    changes: tuple[tuple[str, int, float, float], ...]  # offer, period, packs before, packs after


@dataclass(frozen=True, kw_only=True)
class Nearby:
    moves: tuple[Moved, ...]
    points: tuple[BudgetPoint, ...]  # rising budgets, objectives never falling
    knee: (
        int | None
    )  # the point where the curve bends most; None: no bend to speak of, or poor points on the curve
    next_budget: float | None  # so much money more ...
    next_earns: float | None  # ... earns so much more
    less: LessMoney | None  # None too where the order for less money is a poor one
    budget_price: float | None
    seconds: float
    not_told: str  # "", or a sentence why a part is missing
