"""A shown table as a workbook: what it is, for whom it was narrowed, of which day; heads that stay, rows, sums.

Takes Shown and words; gives the file's bytes and a safe name. Numbers are numbers, days days; text is never a formula.
"""

import datetime as dt
import re
from decimal import Decimal

from openpyxl.utils import get_column_letter

from inventory.printed.cells import (
    BOLD,
    DAY,
    PLAIN,
    bytes_of,
    clean,
    figure,
    head_row,
    new_book,
    rule,
    text,
    title,
    widths,
)

HEADS = 4
NARROW, WIDE, SPARE = 9, 60, 2
NOT_A_NAME = re.compile(r"[\[\]:*?/\\\x00-\x1f']")


def book_of(shown, *, name, words, day):
    """The .xlsx file of one table; `words` say how its rows were narrowed and ordered."""
    book = new_book()
    sheet = book.active
    sheet.title = NOT_A_NAME.sub(" ", clean(name)).strip()[:31] or "Table"
    title(sheet, name, ". ".join(filter(None, (shown.caption, words, f"Of {day.day} {day:%B %Y}"))))
    right = [place for place, (_, at_right) in enumerate(shown.columns, 1) if at_right]
    head_row(sheet, HEADS, [head for head, _ in shown.columns], right=right)
    for row, values in enumerate(shown.rows, HEADS + 1):
        _write(sheet, row, values, PLAIN)
    below = HEADS + len(shown.rows)
    for row, values in enumerate(shown.sums, below + 1):
        _write(sheet, row, values, BOLD)
        if row == below + 1:
            rule(sheet, row, len(shown.columns), above=True)
    widths(sheet, *_widths(shown))
    sheet.freeze_panes = sheet.cell(HEADS + 1, 1)
    if shown.columns:
        last = get_column_letter(len(shown.columns))
        sheet.auto_filter.ref = f"A{HEADS}:{last}{max(below, HEADS + 1)}"
    sheet.print_title_rows = f"{HEADS}:{HEADS}"
    return bytes_of(book, name=name, day=day)


def file_name(name, day):
    """Small letters, digits and hyphens, and the day: safe on every desktop and in a letter."""
    plain = re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-")[:60].strip("-")
    return f"{plain or 'table'}-{day.isoformat()}.xlsx"


def _write(sheet, row, values, font):
    for column, value in enumerate(values, 1):
        if isinstance(value, dt.date):
            figure(sheet, row, column, value, DAY, font=font)
        elif isinstance(value, int | Decimal):
            figure(sheet, row, column, value, _style(value), font=font)
        elif value:
            text(sheet, row, column, value, font=font)


def _style(value):
    places = len(str(value).partition(".")[2])
    return "#,##0" + ("." + "0" * places if places > 0 else "")


def _widths(shown):
    for place, (head, _) in enumerate(shown.columns):
        cells = [row[place] for row in (*shown.rows, *shown.sums)]
        longest = max((len(_printed(value)) for value in cells), default=0)
        yield min(WIDE, max(NARROW, longest + SPARE, len(head) + SPARE))


def _printed(value):
    return (
        "00 mmm 0000" if isinstance(value, dt.date) else f"{value:,}" if not isinstance(value, str) else value
    )
