"""The programme as built: PuLP's problem and which column stands for which act.

Takes nothing; holds what the solution needs to read a plan off the columns' values.
"""

from dataclasses import dataclass, field
from typing import Any

import pulp

from planner.sizing.records import Offer, Problem, Recipe


@dataclass(frozen=True, kw_only=True)
class Order:
    """Packs of one offer ordered in one period; `scenario` is None for here-and-now.

    `packs`, `cost`: columns and what each adds to the packs and to the money; `chosen`: price steps of which one holds.
    """

    offer: Offer
    period: int
    scenario: int | None
    packs: dict
    cost: dict
    most: float
    chosen: dict = field(default_factory=dict)

    @property
    def landing(self):
        return self.period + self.offer.lead_periods


@dataclass(frozen=True, kw_only=True)
class Fee:
    supplier: str
    period: int
    scenario: int | None
    terms: dict


@dataclass(frozen=True, kw_only=True)
class Served:
    """Uses served through one column, or (column None) to a fixed share of their units.

    Merged uses have their own `units`, no more than the share to which what they wait for (`on`) is served; what
    others wait for is served `alike`, all to one share.
    """

    scenario: int
    uses: tuple  # of Use, filled in this order
    column: Any
    share: float = 0.0
    units: tuple | None = None
    on: "Served | None" = None
    alike: bool = False


@dataclass(frozen=True, kw_only=True)
class Run:
    """Runs of a recipe begun in periods first to last, and counted in the last."""

    scenario: int
    recipe: Recipe
    first: int
    last: int
    column: Any


@dataclass(frozen=True, kw_only=True)
class Hauled:
    scenario: int
    line: int
    part: str
    period: int
    column: Any


@dataclass(frozen=True, kw_only=True)
class Slack:
    """How far one limit is overstepped, in a programme built to find a contradiction."""

    kind: str
    scenario: int | None
    what: Any
    column: Any


@dataclass(kw_only=True)
class Programme:
    problem: Problem
    lp: pulp.LpProblem
    orders: list = field(default_factory=list)
    fees: list = field(default_factory=list)
    served: list = field(default_factory=list)
    runs: list = field(default_factory=list)
    hauled: list = field(default_factory=list)
    slacks: list = field(default_factory=list)
    families: dict = field(default_factory=dict)  # row name -> family
    budget_row: str | None = None
    later_budget_rows: dict = field(default_factory=dict)  # scenario -> row name
    work_rows: dict = field(default_factory=dict)  # (scenario, period) -> row names
    stock_effects: dict = field(default_factory=dict)  # part -> {row name: units more on the right side}
    stock_worth: dict = field(default_factory=dict)  # part -> {scenario: objective per unit more in stock}
    tail_rows: dict = field(default_factory=dict)  # scenario -> row name of its shortfall against bad years
    spread: dict = field(default_factory=dict)  # scenario -> weight of its own money in the objective
