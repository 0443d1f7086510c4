"""One row of an evening's table: as it was typed, and as it was understood.

A ditto mark, or an empty day, means what stands in the row above. Changes nothing.
"""

from dataclasses import dataclass, replace
from datetime import date

DITTO = ('"', "〃", "''", "”")
COLUMNS = ("day", "act", "place", "gear", "quantity", "other")


@dataclass(frozen=True, kw_only=True)
class Typed:
    """The words of one row, spaces squeezed. `number` counts rows from 1 as the table shows them."""

    number: int
    day: str = ""
    act: str = ""
    place: str = ""
    gear: str = ""
    quantity: str = ""
    other: str = ""

    def __post_init__(self):
        for column in COLUMNS:
            object.__setattr__(self, column, " ".join(str(getattr(self, column)).split()))

    @property
    def blank(self):
        """Nothing was told: a day or an act alone is no row yet."""
        return not (self.place or self.gear or self.quantity or self.other)


@dataclass(frozen=True, kw_only=True)
class Told:
    """A row understood: the act, its day, where, what of it and how many."""

    number: int
    day: date
    act: object
    ground: object
    quantity: int
    gear: object = None
    other: object = None


def without_dittos(rows):
    """The rows that tell something, each ditto and each empty day filled in from the row above it."""
    above, told = Typed(number=0), []
    for row in rows:
        if row.blank:
            continue
        same = {column: getattr(above, column) for column in COLUMNS if getattr(row, column) in DITTO}
        if not row.day:
            same["day"] = above.day
        above = replace(row, **same)
        told.append(above)
    return told
