"""A plan's records, one a JSON object of the plan file (see plan_json.py).

Takes plain values; money is float here, recomputed from whole packs. Solves nothing.
"""

from collections.abc import Mapping
from dataclasses import dataclass

OPTIMAL, WITHIN_GAP, TIME_LIMIT = "optimal", "within_gap", "time_limit"
INFEASIBLE, UNBOUNDED = "infeasible", "unbounded"


@dataclass(frozen=True, kw_only=True)
class PackLine:
    offer: str
    period: int
    packs: float
    units: Mapping[str, float]
    cost: float


@dataclass(frozen=True, kw_only=True)
class LaterLine:
    offer: str
    period: int
    packs: float
    cost: float


@dataclass(frozen=True, kw_only=True)
class FeeLine:
    supplier: str
    period: int
    fee: float


@dataclass(frozen=True, kw_only=True)
class UseLine:
    use: str
    units: float


@dataclass(frozen=True, kw_only=True)
class MadeLine:
    recipe: str
    period: int
    units: float


@dataclass(frozen=True, kw_only=True)
class HauledLine:
    source: str  # "from" in the file
    target: str  # "to" in the file
    period: int
    part: str
    units: float


@dataclass(frozen=True, kw_only=True)
class TripLine:
    source: str
    target: str
    period: int
    trips: int


@dataclass(frozen=True, kw_only=True)
class ScenarioPlan:
    code: str
    objective: float
    later: tuple[LaterLine, ...]
    fees: tuple[FeeLine, ...]
    served: tuple[UseLine, ...]
    short: tuple[UseLine, ...]
    made: tuple[MadeLine, ...]
    hauled: tuple[HauledLine, ...]
    trips: tuple[TripLine, ...]
    work: tuple[float, ...]


@dataclass(frozen=True, kw_only=True)
class ShadowPrices:
    """Money one unit more of a limit would earn; None where there is no such limit."""

    budget: float | None
    later_budget: Mapping[str, float]
    work: Mapping[str, tuple[float, ...]]
    parts: Mapping[str, float]


@dataclass(frozen=True, kw_only=True)
class Plan:
    status: str
    reason: str | None
    objective: float | None
    bound: float | None
    gap: float | None
    seconds: float
    solver: str
    here_and_now: tuple[PackLine, ...]
    fees: tuple[FeeLine, ...]
    spend: float | None
    scenarios: tuple[ScenarioPlan, ...]
    shadow_prices: ShadowPrices | None
    shadow_prices_withheld: str | None

    @property
    def is_order(self):
        """Whether there is an order to place, be it proven best or not."""
        return self.objective is not None

    def packs(self):
        """Here-and-now packs as {(offer, period): packs}, the form that fixes an order when solving again."""
        return {(line.offer, line.period): line.packs for line in self.here_and_now}
