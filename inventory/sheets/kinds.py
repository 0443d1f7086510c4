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


KINDS = (
    Kind(
        code="everything",
        name="Everything at once",
        about="Yards, flows, colonies, gear by place, suppliers and prices, past winters. To begin with.",
        file="my-gear.xlsx",
        tables=TABLES,
    ),
    Kind(
        code="yards",
        name="Yards and colonies",
        about="Yards and their flows as the books have them, and room for colonies that are new.",
        file="yards-and-colonies.xlsx",
        tables=(KEEPER, YARDS, FLOWS, COLONIES),
    ),
    Kind(
        code="opening",
        name="Opening stock",
        about="What lies in the shed and the yards, place by place.",
        file="opening-stock.xlsx",
        tables=(GEAR,),
    ),
    Kind(
        code="prices",
        name="Price lists",
        about="Suppliers and prices as the books have them, to bring up to date. One supplier alone will do.",
        file="price-lists.xlsx",
        tables=(SUPPLIERS, PRICES, KITS),
    ),
    Kind(
        code="winters",
        name="Past winters",
        about="Colonies in and out, winter by winter: how many come through is learned from it.",
        file="past-winters.xlsx",
        tables=(WINTERS,),
    ),
    Kind(
        code="count",
        name="Count sheet",
        about="What may lie at each place, to print, fill in and send back. It becomes a draft, not yet the book.",
        file="count-sheet.xlsx",
        tables=COUNT_TABLES,
    ),
)
BY_CODE = {kind.code: kind for kind in KINDS}
ALL_TABLES = (*TABLES, *COUNT_TABLES)
