"""Reads a keeper's workbook: bytes in, a Sheet out, or every fault in it with sheet, cell, what and remedy.

Takes the bytes and what the books know; gives a Reading. Posts nothing, knows no table.
"""

from dataclasses import dataclass

from inventory.sheets.colonies import colonies_of, gear_of, note_crowded
from inventory.sheets.counted import counts_of
from inventory.sheets.faults import Fault, Note, Unreadable
from inventory.sheets.findings import Findings
from inventory.sheets.grid import grids_of
from inventory.sheets.kinds import ALL_TABLES, KINDS
from inventory.sheets.layout import (
    COLONIES,
    COUNTED,
    FLOWS,
    GEAR,
    KEEPER,
    KITS,
    PLACES,
    PRICES,
    SILENT,
    SUPPLIERS,
    TABLES,
    WINTERS,
    YARDS,
)
from inventory.sheets.names import Names, alike, nearest
from inventory.sheets.offers import offers_of, suppliers_of
from inventory.sheets.opening import reads_other_files
from inventory.sheets.records import Sheet
from inventory.sheets.rows import rows_of
from inventory.sheets.winters import winters_of
from inventory.sheets.yards import flows_of, keeper_of, yards_of

OURS = {alike(table.title): table.title for table in ALL_TABLES}
AT_YARDS = (FLOWS, COLONIES, GEAR, PLACES)


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
        grids = grids_of(content, wanted=lambda title: alike(title) in OURS)
    except Unreadable as wrong:
        return Reading(sheet=None, faults=(wrong.fault,))
    if reads_other_files(content):
        findings.note("", "", "The workbook reads other files; what it last showed of them is taken")
    rows = _rows(grids, findings)
    if rows is None:
        return Reading(sheet=None, faults=tuple(findings.faults))
    sheet = _sheet(rows, known, findings, day=day)
    faults, notes = findings.in_order(list(OURS.values()))
    return Reading(sheet=None if faults else sheet, faults=faults, notes=notes)


def _rows(grids, findings):
    """Table title -> its rows, of the sheets that are there; None where the workbook is not one of ours at all."""
    by_form = {alike(grid.title): grid for grid in grids}
    others = {form: grid.title for form, grid in by_form.items() if form not in OURS and form not in SILENT}
    missing = [table for table in ALL_TABLES if alike(table.title) not in by_form]
    if len(missing) == len(ALL_TABLES):
        titles = ", ".join(table.title for table in TABLES)
        findings.fault("", "", f"None of the sheets {titles} is in it", "Start from the template")
        return None
    for table in missing:
        near = nearest(table.title, others.values(), likeness=0.75)
        if near:
            findings.fault(table.title, "", "the sheet is missing", f"Rename the sheet {near!r}")
            others.pop(alike(near))
    there = [table for table in ALL_TABLES if table not in missing]
    if missing and not any(set(there) == {*kind.tables} for kind in KINDS):
        titles = ", ".join(table.title for table in missing if table in TABLES)
        findings.note("", "", f"Not in the workbook, and so left as the books have it: {titles}")
    for title in others.values():
        findings.note(title, "", "the sheet is not one of the template's and is not read")
    return {table.title: rows_of(table, by_form[alike(table.title)], findings) for table in there}


def _sheet(rows, known, findings, *, day):
    def of(table):
        return rows.get(table.title, [])

    keeper = keeper_of(of(KEEPER), known, findings) if KEEPER.title in rows else None
    yards, yard_names = yards_of(of(YARDS), known, findings, is_there=YARDS.title in rows)
    colonies = colonies_of(of(COLONIES), yard_names, known, findings, day=day)
    suppliers, supplier_names = suppliers_of(of(SUPPLIERS), known, findings)
    _say_what_none_is_known_of(rows, yard_names, supplier_names, findings)
    sheet = Sheet(
        keeper=keeper,
        yards=yards,
        flows=flows_of(of(FLOWS), yard_names, findings),
        colonies=colonies,
        gear=gear_of(of(GEAR), yard_names, yards, known, findings),
        suppliers=suppliers,
        offers=offers_of(of(PRICES), of(KITS), supplier_names, known, findings),
        winters=winters_of(of(WINTERS), yard_names, findings, day=day),
        counts=counts_of(of(PLACES), of(COUNTED), Names(known.yards), known, findings, day=day),
    )
    note_crowded(yards, colonies, known, findings)
    return sheet


def _say_what_none_is_known_of(rows, yard_names, supplier_names, findings):
    """Rows that name a yard or a supplier where neither sheet nor books know any: said once a sheet."""
    for table in AT_YARDS:
        if rows.get(table.title) and not yard_names.by_code and YARDS.title not in rows:
            findings.fault(
                table.title, "", "no yard is known yet", "Send your yards first, or add the sheet Yards"
            )
    if rows.get(PRICES.title) and not supplier_names.by_code and SUPPLIERS.title not in rows:
        what = "no supplier is known yet"
        findings.fault(PRICES.title, "", what, "Add the sheet Suppliers, with a row for each of them")
