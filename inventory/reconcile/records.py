"""The records of reconciling: a difference, what the books know around the day, and an explanation.

Places are keys of locations, acts, colonies and orders their keys too; parts are codes, conditions and reasons words.
"""

import datetime as dt
from dataclasses import dataclass, field
from enum import StrEnum

Pieces = tuple[str, str, int]  # part, condition, quantity


@dataclass(frozen=True, kw_only=True)
class Difference:
    """One gear at one place: what the book says of that evening, and what was counted."""

    place: int
    part: str
    condition: str
    booked: int
    counted: int

    @property
    def gap(self):
        """Above zero: more than booked; below: missing."""
        return self.counted - self.booked

    @property
    def key(self):
        return (self.place, self.part, self.condition)


@dataclass(frozen=True, kw_only=True)
class Moved:
    """A movement in the books; `act` is the act that wrote it, not reversed and no reversal itself."""

    act: int
    day: dt.date
    part: str
    condition: str
    quantity: int
    source: int
    target: int
    reason: str


@dataclass(frozen=True, kw_only=True)
class Piece:
    """What a rule has to know of a part."""

    code: str
    kind: str
    depth: str = ""
    width: int | None = None
    comb: str = ""
    flat: bool = False


@dataclass(frozen=True, kw_only=True)
class Hive:
    """A colony as the books have it on the day; `supers`: boxes beyond its set."""

    colony: int
    place: int
    yard: int
    tag: str
    ended: bool = False
    in_flow: bool = False
    width: int = 10
    supers: int = 0
    gear: tuple[Pieces, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Owed:
    """Pieces still to come on an order."""

    order: int
    part: str
    quantity: int


@dataclass(frozen=True, kw_only=True)
class Making:
    """A recipe of the workbench: what one making takes and makes."""

    recipe: str
    takes: tuple[tuple[str, int], ...]
    makes: tuple[tuple[str, int], ...]


@dataclass(frozen=True, kw_only=True)
class Facts:
    """What the books know around the day of the count. `elsewhere`: differences of other counts near that day."""

    day: dt.date
    yard_of: dict[int, int]  # store's key -> its yard's; a place that is not here is a colony
    pieces: dict[str, Piece] = field(default_factory=dict)
    moved: tuple[Moved, ...] = ()
    elsewhere: tuple[Difference, ...] = ()
    hives: tuple[Hive, ...] = ()
    owed: tuple[Owed, ...] = ()
    makings: tuple[Making, ...] = ()

    def is_store(self, place):
        return place in self.yard_of

    def near(self, place):
        """The hives of a store's yard; of all yards where it has none, as the shed."""
        here = [hive for hive in self.hives if hive.yard == self.yard_of.get(place)]
        return here or list(self.hives)


class Likely(StrEnum):
    """What may have happened. The order is that in which equals are told."""

    UNBOOKED = "moved and not booked"
    LATER = "booked with a later day"
    OTHER_WAY = "booked the other way round"
    NEVER_CAME = "booked as brought here, never came"
    STILL_HERE = "booked as taken away, still here"
    ELSEWHERE = "booked to another place, came here"
    TWICE = "booked twice"
    SUPER_UP = "supers put on and not booked"
    PULLED = "supers pulled and not booked"
    ASSEMBLED = "assembled and not booked"
    NOT_ASSEMBLED = "booked as assembled, still in pieces"
    DRAWN = "drawn by bees and not booked"
    MARKED = "condition changed and not booked"
    DEADOUT = "taken off a dead hive and not booked"
    RECEIPT = "came on an order and not booked"


@dataclass(frozen=True, kw_only=True)
class Explanation:
    """What may have happened at `place` to these pieces. `act`: to be reversed, where reversing puts it right."""

    likely: Likely
    place: int
    pieces: tuple[Pieces, ...]
    source: int | None = None
    target: int | None = None
    act: int | None = None
    whole: bool = False  # all of the act's pieces are explained: it may be reversed as it is
    day: dt.date | None = None
    colonies: tuple[int, ...] = ()
    order: int | None = None
    recipe: str = ""
    times: int = 0


def fits(quantity, gap):
    """So many pieces explain more than half of a gap and not more than it."""
    return 0 < quantity <= abs(gap) < 2 * quantity
