"""Reads a keeper's workbook: bytes in, a Sheet out, or every fault in it with sheet, cell, what and remedy.

Takes the bytes and what the books know; gives a Reading. Posts nothing, knows no table.
"""

from dataclasses import dataclass

from inventory.sheets.colonies import colonies_of, gear_of, note_crowded
from inventory.sheets.faults import Fault, Note, Unreadable
from inventory.sheets.findings import Findings
from inventory.sheets.grid import grids_of
from inventory.sheets.layout import (
    COLONIES,
    FLOWS,
    GEAR,
    KEEPER,
    KITS,
    PRICES,
    SILENT,
    SUPPLIERS,
    TABLES,
    YARDS,
)
from inventory.sheets.names import alike, nearest
from inventory.sheets.offers import offers_of, suppliers_of
from inventory.sheets.records import Sheet
from inventory.sheets.rows import rows_of
from inventory.sheets.yards import flows_of, keeper_of, yards_of


@dataclass(frozen=True, kw_only=True)
class Reading:
    """`sheet` is None while there is any fault; notes stop nothing."""

    sheet: Sheet | None
    faults: tuple[Fault, ...] = ()
    notes: tuple[Note, ...] = ()


def read_sheet(content, known, *, day=None):
    """The workbook in `content` as a Reading. `day`, where given, is the day it would be loaded on."""
    findings = Findings()
    try:
        grids = grids_of(content)
    except Unreadable as wrong:
        return Reading(sheet=None, faults=(wrong.fault,))
    rows = _rows(grids, findings)
    if rows is None:
        return Reading(sheet=None, faults=tuple(findings.faults))
    sheet = _sheet(rows, known, findings, day=day)
    faults, notes = findings.in_order([table.title for table in TABLES])
    return Reading(sheet=None if faults else sheet, faults=faults, notes=notes)


def _rows(grids, findings):
    """Table title -> its rows; None where the workbook is not one of ours at all."""
    by_form = {alike(grid.title): grid for grid in grids}
    ours = {alike(table.title): table.title for table in TABLES}
    if not ours.keys() & by_form.keys():
        findings.fault(
            "", "", f"None of the sheets {', '.join(ours.values())} is in it", "Start from the template"
        )
        return None
    others = {form: grid.title for form, grid in by_form.items() if form not in ours and form not in SILENT}
    rows = {}
    for table in TABLES:
        grid = by_form.get(alike(table.title))
        if grid is None:
            near = nearest(table.title, others.values(), likeness=0.75)
            remedy = f"Rename the sheet {near!r}" if near else "Add it from the template; it may stay empty"
            findings.fault(table.title, "", "the sheet is missing", remedy)
            others.pop(alike(near or ""), None)
        rows[table.title] = rows_of(table, grid, findings) if grid else []
    for title in others.values():
        findings.note(title, "", "the sheet is not one of the template's and is not read")
    return rows


def _sheet(rows, known, findings, *, day):
    keeper = keeper_of(rows[KEEPER.title], known, findings)
    yards, yard_names = yards_of(rows[YARDS.title], known, findings)
    flows = flows_of(rows[FLOWS.title], yard_names, findings)
    colonies = colonies_of(rows[COLONIES.title], yard_names, known, findings, day=day)
    gear = gear_of(rows[GEAR.title], yard_names, yards, known, findings)
    suppliers, supplier_names = suppliers_of(rows[SUPPLIERS.title], known, findings)
    offers = offers_of(rows[PRICES.title], rows[KITS.title], supplier_names, known, findings)
    note_crowded(yards, colonies, known, findings)
    return Sheet(
        keeper=keeper,
        yards=yards,
        flows=flows,
        colonies=colonies,
        gear=gear,
        suppliers=suppliers,
        offers=offers,
    )
