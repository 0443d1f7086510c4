"""What happened to gear, as far as money goes, and what it comes to. Pure records; money in whole cents.

A movement between places of one's own has no record: it changes no value. `key` names what a later record may undo.
"""

import datetime as dt
from dataclasses import dataclass
from decimal import Decimal


@dataclass(frozen=True, kw_only=True)
class Came:
    """Pieces came in: for known cents; or at the average of those there, as found ones do. Or it undoes a Left."""

    day: dt.date
    part: str
    pieces: int
    why: str
    cents: int | None = None
    key: str = ""
    undoes: str = ""


@dataclass(frozen=True, kw_only=True)
class Passed:
    """Pieces that were paid for and never came into stock: broken on arrival, thrown away."""

    day: dt.date
    part: str
    pieces: int
    cents: int
    why: str
    gone: str
    key: str = ""


@dataclass(frozen=True, kw_only=True)
class Made:
    """Gear turned into other gear: what went in is what it is worth, own work added where it is told."""

    day: dt.date
    takes: tuple[tuple[str, int], ...]
    makes: tuple[tuple[str, int], ...]
    why: str
    work_cents: int = 0
    key: str = ""


@dataclass(frozen=True, kw_only=True)
class Left:
    """Pieces went out at the average; or it undoes a Came, and takes along what that one brought."""

    day: dt.date
    part: str
    pieces: int
    why: str
    key: str = ""
    undoes: str = ""


Event = Came | Passed | Made | Left


@dataclass(frozen=True, kw_only=True)
class Posted:
    """One line of the books in money: pieces and cents in (above zero) or out (below)."""

    day: dt.date
    part: str
    pieces: int
    cents: int
    why: str
    key: str = ""
    undoes: str = ""


def money(cents):
    """Decimal of whole cents."""
    return Decimal(cents) / 100
