"""The sheets of the workbook that are read by people only: how to fill it in, examples, lists of names.

Takes worksheets of the workbook being made; writes onto them. Nothing on them is read back as data.
"""

from dataclasses import replace

from openpyxl.styles import Alignment, Font

from inventory.sheets.examples import COUNTS, example, example_names
from inventory.sheets.writing import cells_of

ADVICE = (
    "Fill in the sheets from left to right. Sheet Examples shows each with invented rows; nothing there is read.",
    "Keep the headings. Columns may stand in any order; columns of your own are left alone and not read.",
    "Where a list drops down, pick from it. Parts and sets are those on sheet Lists.",
    "Write a day as 2026-03-04, or with the month in letters, as 4 March 2026. 03/04/2026 can be read two ways.",
    "Write numbers with a point, 1234.5, or a decimal comma, 69,50. Counts are whole numbers, 0 or more.",
    "A formula is taken by the value it shows. Where it shows none, type the value.",
    "Gear on a colony follows from its set and its supers: do not count it again on sheet Gear.",
    "Load it as often as you like. The same file posts once; a changed one brings prices and yards up to date,",
    "adds new colonies, and corrects counts to what it says. Until every row is good, nothing is posted.",
)
CAUTIONS = (
    "Caution: gear of a colony that may have died of disease is held back, not sound. Call your bee inspector; "
    "local rules decide.",
    "Caution: a full deep weighs 80 to 90 lb. Lift with help or frame by frame, light the smoker where nothing can burn, "
    "wear your veil, carry what you need against a sting reaction, and tell someone which yard you are in.",
)
WEEKS = (
    "Weeks of the year: 1 early January, 5 February, 9 March, 14 April, 18 May, 22 June, 27 July, 31 August, "
)
WEEKS += "36 September, 40 October, 44 November, 49 December."


def write_guide(page, tables):
    """How to fill this in: advice, the sheets and their columns, cautions."""
    page.column_dimensions["A"].width, page.column_dimensions["B"].width = 24, 100
    row = _lines(page, 1, "How to fill this in", ADVICE)
    row = _lines(page, row + 1, "Weeks", (WEEKS,))
    row = _lines(page, row + 1, "Take care", CAUTIONS)
    for table in tables:
        row = _lines(page, row + 1, table.title, (table.about,))
        for column in table.columns:
            page.cell(row, 1, column.heading + (" *" if column.needed else ""))
            page.cell(row, 2, column.hint).alignment = Alignment(wrap_text=True)
            row += 1
    page.cell(row + 1, 1, "* may not be empty")
    page.freeze_panes = "A2"
    _fit(page, f"A1:B{row + 1}")


def _lines(page, row, head, lines):
    page.cell(row, 1, head).font = Font(bold=True)
    for line in lines:
        page.cell(row, 2, line).alignment = Alignment(wrap_text=True, vertical="top")
        row += 1
    return row


def write_examples(page, write_cell, write_head, tables):
    """One block a sheet, marked as invented."""
    page.cell(1, 1, "Examples, invented. Nothing on this sheet is read.").font = Font(bold=True)
    cells, row = cells_of(replace(example(), counts=COUNTS), example_names()), 3
    for table in tables:
        page.cell(row, 1, f"As on the sheet {table.title}").font = Font(bold=True)
        write_head(page, row + 1, [column.heading for column in table.columns])
        row += 2
        for values in cells[table.title]:
            for number, column in enumerate(table.columns, 1):
                write_cell(page.cell(row, number), column, values.get(column.key))
            row += 1
        row += 1
    for number in range(1, 22):
        page.column_dimensions[page.cell(1, number).column_letter].width = 20
    page.freeze_panes = "A2"
    _fit(page, f"A1:U{row}")


def write_lists(page, known, write_head):
    """Names the drop-downs offer: parts with what they are counted in, sets, yards, suppliers."""
    write_head(page, 1, ["Part", "Counted in", "Code", "", "Set", "Code", "", "Yard", "", "Supplier"])
    lists: dict[int, list[tuple[str, ...]]] = {
        1: [(name, known.units.get(code, "piece"), code) for code, name in known.parts.items()],
        5: [(one.name, code) for code, one in known.sets.items()],
        8: [(name,) for name in known.yards.values()],
        10: [(name,) for name in known.suppliers.values()],
    }
    for first, names in lists.items():
        for row, texts in enumerate(names, 2):
            for number, text in enumerate(texts, first):
                page.cell(row, number, text).data_type = "s"
    for letter, width in zip("ABCDEFGHIJ", (48, 12, 30, 4, 36, 24, 4, 24, 4, 30), strict=True):
        page.column_dimensions[letter].width = width
    page.freeze_panes = "A2"
    _fit(page, f"A1:J{max(map(len, lists.values())) + 1}")


def _fit(page, area):
    page.print_area = area
    page.page_setup.orientation = "landscape"
    page.page_setup.fitToWidth, page.page_setup.fitToHeight = 1, 0
    page.sheet_properties.pageSetUpPr.fitToPage = True
