"""Which workbooks there are to fill in: everything at once, or one matter alone, each with its sheets.

Takes nothing; gives KINDS. Any of the sheets may come in any workbook: what is missing stays as the books have it.
"""

from dataclasses import dataclass

from inventory.sheets.columns import Table
from inventory.sheets.layout import (
    COLONIES,
    COUNT_TABLES,
    FLOWS,
    GEAR,
    KEEPER,
    KITS,
    PRICES,
    SUPPLIERS,
    TABLES,
    WINTERS,
    YARDS,
)


@dataclass(frozen=True, kw_only=True)
class Kind:
    """`name` and `about` are shown; `code` names it in addresses, `file` is what a download is called."""

    code: str
    name: str
    about: str
    file: str
    tables: tuple[Table, ...]


def _kind(code, name, file, tables, about):
    return Kind(code=code, name=name, about=about, file=f"{file}.xlsx", tables=tables)


KINDS = (
    _kind(
        *("everything", "Everything at once", "my-gear", TABLES),
        "Yards, flows, colonies, gear by place, suppliers and prices, past winters. To begin with.",
    ),
    _kind(
        *("yards", "Yards and colonies", "yards-and-colonies", (KEEPER, YARDS, FLOWS, COLONIES)),
        "Yards and their flows as the books have them, and room for colonies that are new.",
    ),
    _kind(
        *("opening", "Opening stock", "opening-stock", (GEAR,)),
        "What lies in the shed and the yards, place by place.",
    ),
    _kind(
        *("prices", "Price lists", "price-lists", (SUPPLIERS, PRICES, KITS)),
        "Suppliers and prices as the books have them, to bring up to date. One supplier alone will do.",
    ),
    _kind(
        *("winters", "Past winters", "past-winters", (WINTERS,)),
        "Colonies in and out, winter by winter: how many come through is learned from it.",
    ),
    _kind(
        *("count", "Count sheet", "count-sheet", COUNT_TABLES),
        "What may lie at each place, to print, fill in and send back. It becomes a draft, not yet the book.",
    ),
)
BY_CODE = {kind.code: kind for kind in KINDS}
ALL_TABLES = (*TABLES, *COUNT_TABLES)
