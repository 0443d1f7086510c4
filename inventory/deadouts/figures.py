"""A season's losses by yard and by cause, in the published measures. Pure.

Takes each yard's balance and what its dead died of; gives shares of the colonies at risk. The total loss is of all
colonies together, the average loss the mean of the yards' own: both are told, under their names, never mixed.
Measures: van der Zee et al. 2013, BEEBOOK volume II, epidemiological surveys, 1.3.3.1.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

from apiary.losses import ColonyBalance, average_loss, total_loss


@dataclass(frozen=True, kw_only=True)
class YardLosses:
    """One yard over one span; `causes` counts its dead by what they died of, those nobody worked among them."""

    yard: str
    balance: ColonyBalance
    causes: Mapping[str, int]

    def __post_init__(self):
        if sum(self.causes.values()) != self.balance.dead:
            raise ValueError(
                f"{self.yard}: {self.balance.dead} died, but causes are told of {sum(self.causes.values())}."
            )

    @property
    def loss(self):
        """Share of its colonies at risk; None where none was."""
        return self.balance.loss if self.balance.at_risk else None


@dataclass(frozen=True, kw_only=True)
class CauseLosses:
    cause: str
    dead: int
    share: Fraction  # of all colonies at risk


@dataclass(frozen=True, kw_only=True)
class SeasonLosses:
    rows: tuple[YardLosses, ...]
    causes: tuple[CauseLosses, ...]
    whole: ColonyBalance
    total: Fraction | None
    average: Fraction | None


def season_losses(rows):
    """The report of a span: yards as given, causes with the most dead first."""
    rows = tuple(rows)
    balances = [row.balance for row in rows]
    whole = ColonyBalance(
        start=sum(balance.start for balance in balances),
        increase=sum(balance.increase for balance in balances),
        removed=sum(balance.removed for balance in balances),
        end=sum(balance.end for balance in balances),
    )
    if not whole.at_risk:
        return SeasonLosses(rows=rows, causes=(), whole=whole, total=None, average=None)
    dead: dict[str, int] = {}
    for row in rows:
        for cause, number in row.causes.items():
            dead[cause] = dead.get(cause, 0) + number
    causes = sorted((-number, cause) for cause, number in dead.items() if number)
    return SeasonLosses(
        rows=rows,
        causes=tuple(
            CauseLosses(cause=cause, dead=-less, share=Fraction(-less, whole.at_risk))
            for less, cause in causes
        ),
        whole=whole,
        total=total_loss(balances),
        average=average_loss(balances),
    )


def percent(share, *, places=1):
    """A share in per cent, half a last place rounded up, as figures are published."""
    exact = Decimal(share.numerator) * 100 / Decimal(share.denominator)
    return str(exact.quantize(Decimal(1).scaleb(-places), ROUND_HALF_UP))
