"""Workbooks of the keeper, in and out: template() and filled() write one, read_sheet() reads one back.

Pure: bytes and records only. A fault says sheet, cell, what is wrong and what would be right.
"""

from inventory.sheets.faults import Fault, Note
from inventory.sheets.reading import Reading, read_sheet
from inventory.sheets.records import (
    ColonyRow,
    FlowRow,
    GearRow,
    KeeperRow,
    Known,
    KnownSet,
    OfferRow,
    Sheet,
    SupplierRow,
    YardRow,
)
from inventory.sheets.template import filled, template

__all__ = [
    "ColonyRow",
    "Fault",
    "FlowRow",
    "GearRow",
    "KeeperRow",
    "Known",
    "KnownSet",
    "Note",
    "OfferRow",
    "Reading",
    "Sheet",
    "SupplierRow",
    "YardRow",
    "filled",
    "read_sheet",
    "template",
]
