"""The cells of a workbook as plain values: what is typed, what a formula last came to, what is an error.

Takes the bytes; gives a Grid per worksheet, or raises Unreadable. Bounded in rows, columns and filled cells: empty rows
and cells cost nothing, and the size a worksheet states is not believed.
"""

import io
import re
import zipfile
import zlib
from dataclasses import dataclass
from typing import Any, NamedTuple

from openpyxl.utils import get_column_letter
from openpyxl.utils.datetime import from_excel, from_ISO8601

from inventory.sheets.faults import Unreadable
from inventory.sheets.markup import AFRESH, DAMAGED, Walker, walk
from inventory.sheets.opening import leave_to_open
from inventory.sheets.package import book_of, plain

MOST_ROWS = 60_000
MOST_COLUMNS = 60
MOST_SHEETS = 40
MOST_CELLS = 1_000_000  # filled ones, of all sheets together
MOST_MERGES = 20_000
COLUMNS = {get_column_letter(number): number - 1 for number in range(1, MOST_COLUMNS + 1)}
AREA = re.compile(r"([A-Z]{1,3})([0-9]{1,7}):([A-Z]{1,3})([0-9]{1,7})")
BROKEN = (zipfile.BadZipFile, zlib.error, EOFError, OSError, NotImplementedError, KeyError, ValueError)


class Cell(NamedTuple):
    """`value` None where the cell is empty, or where a formula was never worked out."""

    value: Any = None
    is_formula: bool = False
    is_error: bool = False

    @property
    def is_empty(self):
        blank = self.value is None or (isinstance(self.value, str) and not self.value.strip())
        return blank and not self.is_formula


EMPTY = Cell()


@dataclass(frozen=True, kw_only=True)
class Grid:
    """`rows` begin at row 1 and end with the last filled one. `goes_on` where the worksheet has more than are read.

    `hidden`: numbers of filled rows that are hidden; `merged`: (column, first row, last row) merged downwards, column
    from 0."""

    title: str
    rows: tuple[tuple[Cell, ...], ...] = ()
    goes_on: bool = False
    hidden: tuple[int, ...] = ()
    merged: tuple[tuple[int, int, int], ...] = ()


def address(row, column):
    """'B3' of row 3, column 2."""
    return f"{get_column_letter(column)}{row}"


def grids_of(content, *, wanted=None):
    """Every worksheet of the file; those whose title is not wanted are left unread and empty."""
    leave_to_open(content)
    try:
        with zipfile.ZipFile(io.BytesIO(content)) as package:
            book = book_of(package)
            left, grids = MOST_CELLS, []
            for title, member in book.sheets[:MOST_SHEETS]:
                if wanted is not None and not wanted(title):
                    grids.append(Grid(title=title))
                    continue
                reader = _Reader(book, most_cells=left)
                with package.open(member) as stream:
                    walk(stream, reader)
                left -= reader.filled
                grids.append(reader.grid(title))
    except BROKEN as error:
        if isinstance(error, Unreadable):
            raise
        raise Unreadable(*DAMAGED) from error
    return tuple(grids)


class _Reader(Walker):
    """One worksheet, cell by cell."""

    def __init__(self, book, *, most_cells):
        self.book, self.most_cells = book, most_cells
        self.rows, self.hidden, self.merged = {}, [], []
        self.filled, self.goes_on, self.ended = 0, False, False
        self.number, self.at, self.row, self.row_hidden = 0, -1, [], False
        self.kind, self.style, self.pieces, self.is_formula = "n", "", [], False
        self.in_value, self.aside = False, False

    def start(self, name, attributes):
        if name == "c":
            self._begin_cell(attributes)
        elif name == "v" or (name == "t" and not self.aside):
            self.in_value = True
        elif name == "f":
            self.is_formula = True
        elif name == "row":
            number = attributes.get("r", "")
            self.number = int(number) if number.isdecimal() and len(number) < 9 else self.number + 1
            self.row, self.at = [], -1
            self.row_hidden = attributes.get("hidden", "0") in ("1", "true")
        elif name == "rPh":
            self.aside = True
        elif name == "mergeCell":
            self._merge(attributes.get("ref", ""))

    def _begin_cell(self, attributes):
        letters = attributes.get("r", "").rstrip("0123456789")
        self.at = COLUMNS.get(letters, MOST_COLUMNS) if letters else self.at + 1
        self.kind, self.style = attributes.get("t", "n"), attributes.get("s", "")
        self.pieces, self.is_formula = [], False

    def text(self, piece):
        if self.in_value:
            self.pieces.append(piece)

    def end(self, name):
        if name == "c":
            if self.pieces or self.is_formula:
                self._keep()
        elif name in ("v", "t"):
            self.in_value = False
        elif name == "row":
            self._end_row()
        elif name == "rPh":
            self.aside = False
        elif name == "sheetData":
            self.ended = True

    def _keep(self):
        if self.at >= MOST_COLUMNS:
            return
        cell = Cell(self._value("".join(self.pieces)), self.is_formula, self.kind == "e")
        if cell.is_empty:
            return
        if self.number > MOST_ROWS:
            self.goes_on = True
            return
        self.filled += 1
        if self.filled > self.most_cells:
            raise Unreadable(f"The workbook has more than {MOST_CELLS:,} filled cells", AFRESH)
        while len(self.row) <= self.at:
            self.row.append(EMPTY)
        self.row[self.at] = cell

    def _value(self, text):
        kind = self.kind
        if kind == "s":
            return self.book.texts[int(text)]
        if kind in ("str", "inlineStr"):
            return plain(text)
        if not text:
            return None
        if kind == "n":
            return self._number(text)
        if kind == "b":
            return text.strip() == "1"
        return from_ISO8601(text) if kind == "d" else text

    def _number(self, text):
        value = float(text) if "." in text or "e" in text.lower() else int(text[:400])
        if self.style.isdecimal() and int(self.style[:9]) in self.book.dates:
            try:
                return from_excel(value, self.book.epoch)
            except (OverflowError, ValueError):
                return value
        return value

    def _end_row(self):
        if self.row:
            self.rows[self.number] = tuple(self.row)
            if self.row_hidden:
                self.hidden.append(self.number)

    def _merge(self, ref):
        found = AREA.fullmatch(ref)
        if found is None or len(self.merged) >= MOST_MERGES:
            return
        column, first, last = COLUMNS.get(found[1]), int(found[2]), int(found[4])
        if column is not None and last > first:
            self.merged.append((column, first, last))

    def grid(self, title):
        if not self.ended:
            raise Unreadable(*DAMAGED)
        last = max(self.rows, default=0)
        rows = tuple(self.rows.get(number, ()) for number in range(1, last + 1))
        return Grid(
            title=title,
            rows=rows,
            goes_on=self.goes_on,
            hidden=tuple(self.hidden),
            merged=tuple(self.merged),
        )
