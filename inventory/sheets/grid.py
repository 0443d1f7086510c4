"""The cells of a workbook as plain values: what is typed, what a formula last came to, what is an error.

Takes the bytes; gives a Grid per worksheet, or raises Unreadable. Bounded in rows and columns.
"""

import io
import zipfile
import zlib
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any
from xml.etree.ElementTree import ParseError

from defusedxml.common import DefusedXmlException
from openpyxl import load_workbook
from openpyxl.utils import get_column_letter
from openpyxl.utils.exceptions import InvalidFileException

from inventory.sheets.faults import Unreadable
from inventory.sheets.opening import DAMAGED, leave_to_open

MOST_ROWS = 6_000
MOST_COLUMNS = 60
MOST_SHEETS = 40
BROKEN = (
    *(zipfile.BadZipFile, zlib.error, EOFError, OSError, ParseError, DefusedXmlException),
    *(InvalidFileException, KeyError, IndexError, ValueError, TypeError, AttributeError, OverflowError),
)


@dataclass(frozen=True, kw_only=True)
class Cell:
    """`value` None where the cell is empty, or where a formula was never worked out."""

    value: Any = None
    is_formula: bool = False
    is_error: bool = False

    @property
    def is_empty(self):
        blank = self.value is None or (isinstance(self.value, str) and not self.value.strip())
        return blank and not self.is_formula


@dataclass(frozen=True, kw_only=True)
class Grid:
    """`rows` begin at row 1. `goes_on` where the worksheet has more rows than are read."""

    title: str
    rows: tuple[tuple[Cell, ...], ...]
    goes_on: bool = False


def address(row, column):
    """'B3' of row 3, column 2."""
    return f"{get_column_letter(column)}{row}"


def grids_of(content):
    """Every worksheet of the file."""
    leave_to_open(content)
    try:
        values = load_workbook(io.BytesIO(content), read_only=True, data_only=True, keep_links=False)
        formulas = load_workbook(io.BytesIO(content), read_only=True, keep_links=False)
        sheets = [(sheet, formulas[sheet.title]) for sheet in values.worksheets[:MOST_SHEETS]]
        return tuple(_grid(*pair) for pair in sheets)
    except BROKEN as error:  # the library meets a broken file with whatever it stumbles over
        raise Unreadable(*DAMAGED) from error


def _grid(values, formulas):
    rows = tuple(
        tuple(_cell(value, formula) for value, formula in zip(*pair, strict=True))
        for pair in zip(_rows(values), _rows(formulas), strict=True)
    )
    return Grid(title=values.title, rows=rows[:MOST_ROWS], goes_on=len(rows) > MOST_ROWS)


def _rows(sheet) -> Iterator[tuple]:
    """The size a file states for a worksheet may be wrong: it is forgotten, and rows are bounded instead."""
    sheet.reset_dimensions()
    return sheet.iter_rows(max_row=MOST_ROWS + 1, max_col=MOST_COLUMNS)


def _cell(value, formula):
    return Cell(value=value.value, is_formula=formula.data_type == "f", is_error=value.data_type == "e")
