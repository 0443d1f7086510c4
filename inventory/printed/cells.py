"""Putting text, money, counts, days and formulas into a sheet, and how a sheet prints.

Text from people is never a formula: control characters go, the cell is marked as text. Takes openpyxl sheets,
changes them; knows no report.
"""

import datetime as dt
import io
import re

from openpyxl import Workbook
from openpyxl.styles import Alignment, Border, Font, Side
from openpyxl.utils import get_column_letter

CONTROL = re.compile(
    r"[\x00-\x08\x0b-\x1f\x7f-\x9f\ufffe\uffff]|[\ud800-\udfff]|[\u202a-\u202e\u2066-\u2069]"
)
MOST = 32_000  # a cell holds 32,767 characters
FOOT_MOST = 120  # all three parts of a foot share 255

FACE = "Arial"  # its metrics are met by a free font on every desktop
PLAIN = Font(name=FACE, size=10)
TITLE = Font(name=FACE, size=18, bold=True)
HEAD = Font(name=FACE, size=13, bold=True)
BOLD = Font(name=FACE, size=10, bold=True)
QUIET = Font(name=FACE, size=10, color="43504E")
BRICK = Font(name=FACE, size=10, bold=True, color="8A2C17")

INK = "0A4A50"  # the line of a chart
THICK = Side(style="medium", color="14201F")
HAIR = Side(style="hair", color="687573")
THIN = Side(style="thin", color="14201F")

COUNT = "#,##0"
TENTH = "#,##0.0;-#,##0.0;"  # nothing where nothing is asked for
DAY = "d mmm yyyy"
SHARE = "0.00%"
TOP = Alignment(vertical="top")
WRAP = Alignment(vertical="top", wrap_text=True)
BESIDE = Alignment(vertical="top", horizontal="left", wrap_text=True, indent=1)  # text right of a figure
RIGHT = Alignment(vertical="top", horizontal="right")

SIGNED = {
    "USD": "[$$-409]",
    "CAD": "[$CA$-1009]",
    "AUD": "[$A$-C09]",
    "NZD": "[$NZ$-1409]",
    "GBP": "[$£-809]",
}


LETTER_MONEYS = ("USD", "CAD", "MXN")
PAPERS = {"A4": 9, "Letter": 1}


def paper_for(money):
    """Letter where the money is North American, else A4."""
    return "Letter" if money in LETTER_MONEYS else "A4"


def new_book():
    """A workbook with one empty sheet, in the face that all of it is printed in."""
    book = Workbook()
    book._named_styles["Normal"].font = PLAIN
    return book


def bytes_of(book, *, name, day):
    """The .xlsx file; it names no person and no clock."""
    book.properties.creator = ""
    book.properties.title = clean(name)
    book.properties.created = dt.datetime.combine(day, dt.time())
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def money_format(money):
    """Two decimals; the sums' sign where the money has one of its own, else its code behind the figure."""
    sign = SIGNED.get(money)
    if sign:
        return f"{sign}#,##0.00;-{sign}#,##0.00"
    code = re.sub(r"[^A-Z]", "", money)[:3]
    return f'#,##0.00" {code}";-#,##0.00" {code}"'


def clean(text):
    return CONTROL.sub("", str(text))[:MOST]


def text(sheet, row, column, value, *, font=None, wrap=False, align=None):
    cell = sheet.cell(row, column)
    cell.value = clean(value)
    cell.data_type = "s"
    cell.quotePrefix = cell.value[:1] in tuple("=+-@")
    cell.alignment = align or (WRAP if wrap else TOP)
    cell.font = font or PLAIN
    return cell


def figure(sheet, row, column, value, style, *, font=None):
    """A number, a day or nothing."""
    cell = sheet.cell(row, column, value)
    cell.number_format = style
    cell.alignment = RIGHT
    cell.font = font or PLAIN
    return cell


def formula(sheet, row, column, expression, style, *, font=None):
    """A formula of our own making: only cell references, figures and function names."""
    assert re.fullmatch(r"[A-Za-z0-9$.,:;()+*/<>=!' _\"-]+", expression), expression
    return figure(sheet, row, column, f"={expression}", style, font=font)


def title(sheet, words, under):
    """The sheet's name over a quiet line that says of when it is, or how to read it."""
    text(sheet, 1, 1, words, font=TITLE)
    text(sheet, 2, 1, under, font=QUIET)
    sheet.row_dimensions[1].height, sheet.row_dimensions[2].height = 26, 18


def head_row(sheet, row, words, *, right=(), beside=()):
    """Heads of a table: bold over a thick line; those of figures at the right, text beside figures set off."""
    for column, word in enumerate(words, 1):
        across = "right" if column in right else "left"
        cell = text(sheet, row, column, word, font=BOLD)
        indent = 1 if column in beside else 0
        cell.alignment = Alignment(vertical="bottom", horizontal=across, wrap_text=True, indent=indent)
        cell.border = Border(bottom=THICK)


def rule(sheet, row, columns, side=HAIR, *, above=False):
    for column in range(1, columns + 1):
        cell = sheet.cell(row, column)
        cell.border = Border(top=side) if above else Border(bottom=side)


def widths(sheet, *each):
    for column, width in enumerate(each, 1):
        sheet.column_dimensions[get_column_letter(column)].width = width


def lines_of(value, width):
    """Printed lines a wrapped text takes in a column of that width (a wide hand is allowed for)."""
    return sum(max(1, -(-len(line) // max(1, int(width * 1.2)))) for line in clean(value).split("\n"))


def prints(
    sheet, *, wide, paper, repeat, last_column, last_row, foot="Winter order", repeat_from=1, middle="&A"
):
    """Print set-up: fits the width of the paper, heads on every page, page numbers at the foot.

    `foot` may hold what people typed; `middle` is ours: &A prints the sheet's name.
    """
    sheet.page_setup.orientation = "landscape" if wide else "portrait"
    sheet.page_setup.paperSize = PAPERS[paper]
    sheet.sheet_properties.pageSetUpPr.fitToPage = True
    sheet.page_setup.fitToWidth, sheet.page_setup.fitToHeight = 1, 0
    sheet.page_margins.left = sheet.page_margins.right = 0.5
    sheet.page_margins.top, sheet.page_margins.bottom = 0.5, 0.7
    if repeat:
        sheet.print_title_rows = f"{repeat_from}:{repeat}"
    sheet.print_area = f"A1:{get_column_letter(last_column)}{max(1, last_row)}"
    sheet.oddFooter.left.text = clean(foot).replace("\n", " ").replace("&", "&&")[:FOOT_MOST]
    sheet.oddFooter.center.text = middle
    sheet.oddFooter.right.text = "Page &P of &N"
    sheet.sheet_view.showGridLines = False
