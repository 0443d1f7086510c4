"""A trial's outcome: what each order is worth, season by season, on seasons nobody planned with.

Plain immutable records; money is float here. contest.py makes them, planner.plan says them in words.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from planner.trial.replications import StatisticalGap
from planner.trial.statistics import Mean, mean_of, span_of, worst_mean

BAD_SHARE = 0.05  # the worst season in twenty

OURS, YOURS, RULE, MEAN, NOTHING, FORESIGHT, OTHER = (
    "ours",
    "yours",
    "rule",
    "mean",
    "nothing",
    "foresight",
    "other",
)


@dataclass(frozen=True, kw_only=True)
class Contender:
    """An order and its worth in each fresh season; foresight has no order, and may have been tried on fewer."""

    key: str
    packs: Mapping[tuple[str, int], float]
    spend: float | None
    worths: tuple[float, ...]

    @property
    def mean(self) -> Mean:
        return mean_of(self.worths)

    @property
    def bad_year(self):
        """Mean of the worst season in twenty."""
        return worst_mean(self.worths, BAD_SHARE)

    def over(self, other) -> Mean:
        """By how much a season this one is worth more, season against the same season."""
        return mean_of(self._differences(other))

    def span_over(self, other):
        """(low, high): in 19 seasons of 20 the difference lies between."""
        return span_of(self._differences(other))

    def _differences(self, other):
        return [mine - theirs for mine, theirs in zip(self.worths, other.worths, strict=False)]


@dataclass(frozen=True, kw_only=True)
class OtherSeed:
    """The order planned with other seasons: how unlike this one it is, and by how much a season it is worth more."""

    order: Contender
    lines: int  # offers in either order
    changed: int  # of them, those with other packs
    packs: int  # packs more or fewer, summed
    spend_more: float
    worth_more: Mean


@dataclass(frozen=True, kw_only=True)
class Trial:
    seasons: int
    asked: int  # seasons asked for: fewer were tried where time ran out
    contenders: tuple[Contender, ...]
    foresight: Contender | None
    gap: StatisticalGap | None
    other_seed: OtherSeed | None
    left_out: tuple[str, ...]  # what time did not allow

    def contender(self, key):
        """That contender, or None."""
        return next((each for each in self.contenders if each.key == key), None)

    @property
    def ours(self):
        return self.contenders[0]
