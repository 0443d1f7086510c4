"""What a sheet of the workbook is: its title and its columns.

Takes plain values; gives records. The sheets themselves stand in layout.py.
"""

from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True, kw_only=True)
class Column:
    """`empty` is what an empty cell means; a `needed` one may not be empty. `picks` names a list of names."""

    key: str
    heading: str
    holds: Any
    hint: str
    needed: bool = False
    empty: Any = None
    width: int = 14
    picks: str = ""  # yards, parts, sets, suppliers, offers: which drop-down


def column(key, heading, holds, hint, **more):
    """A column; needed, empty, width and picks as far as they differ from the usual."""
    return Column(key=key, heading=heading, holds=holds, hint=hint, **more)


@dataclass(frozen=True, kw_only=True)
class Table:
    title: str
    about: str
    columns: tuple[Column, ...]
    rows: int = 500  # rows with drop-downs in the template

    def position(self, key):
        """Which column of the template it is, from 1."""
        return next(number for number, one in enumerate(self.columns, 1) if one.key == key)
