"""What the belief check says: each answer that may as well be lower or higher, and what the order then ought to be.

Money is Decimal to the cent, packs whole numbers. check.py makes them; json_form.py writes and reads them; the order
page, workbook, text and the reasons of the lines show them. Immutable records, nothing computed.
"""

from dataclasses import dataclass
from decimal import Decimal


@dataclass(frozen=True, kw_only=True)
class End:
    """One other value of an answer, all else as answered, on the same seasons: this order beside the one made for it."""

    words: str  # "55 %": as it reads after "at"
    value: float
    spend: Decimal  # the order made for it spends so much more than this one (below zero: less)
    worth: Decimal  # that order's mean season is worth so much more than this order's as answered (below zero: less)
    regret: Decimal  # this order earns so much less there than the order made for it; never below zero
    regret_most: (
        Decimal  # what the solver's proof leaves open: no order could earn more than that above this one
    )
    changes: dict[
        str, tuple[int, ...]
    ]  # offer -> (packs now, packs of the order made for it), where they differ
    sentence: str = ""


@dataclass(frozen=True, kw_only=True)
class Belief:
    """One answer that nobody can be sure of. An end is None where the time was up before it."""

    key: str  # of the question
    name: str  # "colonies that come through the winter"
    answered: str  # "72 %"
    low: End | None
    high: End | None
    source: str  # where the low and the high value come from, or "judgement"
    find_out: str  # how a keeper finds out

    @property
    def ends(self):
        return tuple(end for end in (self.low, self.high) if end is not None)

    @property
    def regret(self):
        """The most that not knowing costs, at either end."""
        return max((end.regret for end in self.ends), default=Decimal(0))


@dataclass(frozen=True, kw_only=True)
class BeliefsSection:
    """Those that cost most by not being known first. `first` names the keys of the (at most three) to find out."""

    seasons: int
    gap: Decimal  # money a season below which a difference may be the solver's own tolerance
    rows: tuple[Belief, ...]
    first: tuple[str, ...]
    not_reached: tuple[str, ...] = ()  # names of answers the time did not allow
    left_out: tuple[str, ...] = ()  # names of answers that are the keeper's own choice: nothing to find out
    sentences: tuple[str, ...] = ()

    def row(self, key):
        """The belief of that key, or None."""
        return next((row for row in self.rows if row.key == key), None)
