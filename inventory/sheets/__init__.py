"""Workbooks of the keeper, in and out: template() and filled() write one, read_sheet() reads one back.

Pure: bytes and records only. A fault says sheet, cell, what is wrong and what would be right.
"""

from inventory.sheets.faults import Fault, Note
from inventory.sheets.reading import Reading, read_sheet
from inventory.sheets.records import (
    ColonyRow,
    CountedRow,
    CountRow,
    FlowRow,
    GearRow,
    KeeperRow,
    Known,
    KnownSet,
    LineToCount,
    OfferRow,
    Sheet,
    SupplierRow,
    ToCount,
    WinterRow,
    YardRow,
)
from inventory.sheets.template import count_sheet, filled, template

__all__ = [
    "ColonyRow",
    "CountRow",
    "CountedRow",
    "Fault",
    "FlowRow",
    "GearRow",
    "KeeperRow",
    "Known",
    "KnownSet",
    "LineToCount",
    "Note",
    "OfferRow",
    "Reading",
    "Sheet",
    "SupplierRow",
    "ToCount",
    "WinterRow",
    "YardRow",
    "count_sheet",
    "filled",
    "read_sheet",
    "template",
]
