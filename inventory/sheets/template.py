"""The workbook a keeper fills in: template() empty, filled() with a Sheet record in it, count_sheet() to count by.

Takes records; gives the bytes of an .xlsx. Text never becomes a formula. Reading it back is reading.py's.
"""

import io
from copy import copy
from itertools import pairwise

from openpyxl import Workbook
from openpyxl.styles import Alignment, Border, Font, PatternFill, Side
from openpyxl.utils import get_column_letter
from openpyxl.worksheet.datavalidation import DataValidation
from openpyxl.worksheet.pagebreak import Break

from inventory.sheets.guide import write_examples, write_guide, write_lists
from inventory.sheets.kinds import BY_CODE
from inventory.sheets.layout import COUNTED, EXAMPLES, HOW_TO, KITS, LISTS, PRICES, SUPPLIERS, YARDS
from inventory.sheets.records import Known, KnownSet, Sheet
from inventory.sheets.writing import cells_of, cells_to_count

HEAD_FONT = Font(bold=True)
HEAD_FILL = PatternFill("solid", fgColor="EFF3F2")
HEAD_EDGE = Border(bottom=Side(style="medium"))
HEAD_ALIGNMENT = Alignment(wrap_text=True, vertical="bottom")
PRINTED_ROWS = 40


def template(known=None, *, kind="everything"):
    """The workbook of a kind with nothing filled in; drop-downs offer what `known` holds."""
    return filled(Sheet(), known, kind=kind)


def filled(sheet, known=None, *, kind="everything"):
    """The workbook with a Sheet in it. Without `known` its own parts and sets, by code, are the drop-downs."""
    known = known or _known_of(sheet)
    return _workbook(BY_CODE[kind].tables, cells_of(sheet, known), known)


def count_sheet(places, known):
    """The workbook to count by: for each ToCount its rows, the count left empty, a page of paper each."""
    return _workbook(BY_CODE["count"].tables, cells_to_count(places, known), known)


def _workbook(tables, cells, known):
    book = Workbook()
    book.active.title = HOW_TO
    for table in tables:
        _write_table(book.create_sheet(table.title), table, cells[table.title], known, tables)
    write_guide(book[HOW_TO], tables)
    write_examples(book.create_sheet(EXAMPLES), write_cell, write_head, tables)
    write_lists(book.create_sheet(LISTS), known, write_head)
    file = io.BytesIO()
    book.save(file)
    return file.getvalue()


def _known_of(sheet):
    parts = {row.part for row in sheet.gear} | {part for offer in sheet.offers for part in offer.parts}
    sets = {row.hive_set for row in sheet.colonies}
    return Known(
        parts={code: code for code in sorted(parts)},
        sets={code: KnownSet(name=code, width=0) for code in sorted(sets)},
    )


def _write_table(page, table, rows, known, tables):
    write_head(page, 1, [column.heading for column in table.columns])
    for number, column in enumerate(table.columns, 1):
        dimension = page.column_dimensions[get_column_letter(number)]
        dimension.width = column.width
        dimension.number_format = column.holds.number_format
    for at, values in enumerate(rows, 2):
        for number, column in enumerate(table.columns, 1):
            value = values.get(column.key)
            if at <= PRINTED_ROWS or value is not None:
                write_cell(page.cell(at, number), column, value)
    last = max(table.rows, len(rows) + 50)
    for number, column in enumerate(table.columns, 1):
        page.add_data_validation(_validation(column, number, last, known, tables))
    _set_up_print(page, table, len(rows))
    if table is COUNTED:
        _break_by_place(page, rows)


def _break_by_place(page, rows):
    """Each place begins on a sheet of paper of its own."""
    for at, (before, after) in enumerate(pairwise(rows), 2):
        if before["yard"] != after["yard"]:
            page.row_breaks.append(Break(id=at))


def write_head(page, row, headings):
    for number, heading in enumerate(headings, 1):
        cell = page.cell(row, number, heading)
        cell.font, cell.fill = copy(HEAD_FONT), copy(HEAD_FILL)
        cell.border, cell.alignment = copy(HEAD_EDGE), copy(HEAD_ALIGNMENT)


def write_cell(cell, column, value):
    """One value as its column holds it; what an empty cell means anyway stays empty."""
    cell.number_format = column.holds.number_format
    if value is None or (value == column.empty and not column.needed):
        return
    cell.value = column.holds.write(value)
    if isinstance(value, str):
        cell.data_type = "s"  # '=1+1' typed as a name stays a name
    if isinstance(value, str) and "\n" in value:
        cell.alignment = Alignment(wrap_text=True)


def _validation(column, number, last, known, tables):
    """The drop-down or the prompt of one column."""
    letter = get_column_letter(number)
    rule = DataValidation(allow_blank=True, showInputMessage=True, showErrorMessage=False)
    rule.promptTitle, rule.prompt = column.heading[:32], column.hint[:255]
    picks = getattr(column.holds, "picks", ())
    if column.picks or picks:
        rule.type = "list"
        rule.formula1 = _list_range(column.picks, known, tables) if column.picks else f'"{",".join(picks)}"'
        rule.showErrorMessage = True
        rule.error = "Pick a line of the list, or write it exactly as it stands there."
        rule.errorTitle = column.heading[:32]
    rule.add(f"{letter}2:{letter}{last}")
    return rule


def _list_range(picks, known, tables):
    """Where the names of a drop-down stand in the workbook."""
    own = {"yards": (YARDS, "name"), "suppliers": (SUPPLIERS, "name"), "offers": (PRICES, "name")}
    if picks in own and own[picks][0] in tables:
        table, key = own[picks]
        letter, last = get_column_letter(table.position(key)), table.rows + 1
        return f"{table.title}!${letter}$2:${letter}${last}"
    letter, names = {
        "parts": ("A", known.parts),
        "sets": ("E", known.sets),
        "yards": ("H", known.yards),
        "suppliers": ("J", known.suppliers),
    }[picks]
    return f"{LISTS}!${letter}$2:${letter}${max(2, len(names) + 1)}"


def _set_up_print(page, table, count):
    page.freeze_panes = "A2"
    page.print_title_rows = "1:1"
    last = get_column_letter(len(table.columns))
    page.print_area = f"A1:{last}{max(PRINTED_ROWS, count + 1)}"
    page.page_setup.orientation = "landscape"
    page.page_setup.fitToWidth, page.page_setup.fitToHeight = 1, 0
    page.sheet_properties.pageSetUpPr.fitToPage = True
    page.row_dimensions[1].height = 32
    if table is KITS:
        page.sheet_properties.tabColor = "C5CECB"
