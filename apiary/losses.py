"""Colony losses as the epidemiologists count them: dead over at risk. Pure.

Takes whole colonies counted at the start and the end of a span, with what was added and given away between; gives
exact shares. Shares of two spans are never added: the second starts from what the first left.
"""

from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True, kw_only=True)
class ColonyBalance:
    """One operation over one span. `increase`: splits made and colonies bought; `removed`: sold or given away."""

    start: int
    increase: int = 0
    removed: int = 0
    end: int

    def __post_init__(self):
        counts = (("at the start", self.start), ("added", self.increase), ("removed", self.removed))
        for what, count in (*counts, ("at the end", self.end)):
            if not isinstance(count, int) or isinstance(count, bool) or count < 0:
                raise ValueError(f"Colonies {what}: give a whole number, zero or more, got {count!r}.")
        if self.at_risk < self.end:
            raise ValueError(
                f"{self.end} colonies at the end, but only {self.start} + {self.increase} − {self.removed} = "
                f"{self.at_risk} were there to lose: was a split or a purchase left out?"
            )

    @property
    def at_risk(self):
        return self.start + self.increase - self.removed

    @property
    def dead(self):
        return self.at_risk - self.end

    @property
    def loss(self):
        """Share of the colonies at risk that died."""
        if not self.at_risk:
            raise ValueError("No colony was at risk, so there is no loss to tell.")
        return Fraction(self.dead, self.at_risk)


def loss_share(*, start, increase, end, removed=0):
    """Share lost of all that were at risk."""
    return ColonyBalance(start=start, increase=increase, removed=removed, end=end).loss


def total_loss(balances):
    """Of all colonies together: large operations weigh more. Never to be compared with an average loss."""
    at_risk = sum(balance.at_risk for balance in balances)
    if not at_risk:
        raise ValueError("No colony was at risk, so there is no loss to tell.")
    return Fraction(sum(balance.dead for balance in balances), at_risk)


def average_loss(balances):
    """Mean of the operations' own losses: each weighs the same. Those without a colony at risk are left out."""
    losses = [balance.loss for balance in balances if balance.at_risk]
    if not losses:
        raise ValueError("No colony was at risk, so there is no loss to tell.")
    return sum(losses) / len(losses)
