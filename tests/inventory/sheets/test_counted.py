"""Counts read back: the day of each place, pieces by part and condition, an empty cell no zero."""

import datetime as dt
import io
from dataclasses import replace

import pytest
from openpyxl import load_workbook

from inventory.sheets import (
    CountedRow,
    CountRow,
    LineToCount,
    Sheet,
    ToCount,
    count_sheet,
    filled,
    read_sheet,
)
from tests.inventory.sheets.workbooks import known

BOOKS = known(
    has_keeper=True,
    shed="shed",
    yards={"shed": "Home", "creek": "Creek"},
    stands={"shed": 0, "creek": 9},
    colonies={"C-1": "creek"},
)
DAY, LATER = dt.date(2026, 10, 3), dt.date(2026, 12, 1)
BOX = "box-medium-10"
COUNT = CountRow(
    yard="creek",
    day=DAY,
    note="wet",
    lines=(
        CountedRow(part=BOX, quantity=0),
        CountedRow(part=BOX, condition="to mend", quantity=3),
        CountedRow(tag="C-1", part=BOX, quantity=2),
    ),
)


def altered(changes=(), *, counts=(COUNT,)):
    book = load_workbook(io.BytesIO(filled(Sheet(counts=counts), BOOKS, kind="count")))
    for (title, cell), value in dict(changes).items():
        book[title][cell].value = value
    file = io.BytesIO()
    book.save(file)
    return read_sheet(file.getvalue(), BOOKS, day=LATER)


def test_it_works():
    shed = CountRow(yard="shed", day=DAY, lines=(CountedRow(part=BOX, quantity=41),))
    reading = altered(counts=(COUNT, shed))
    assert (reading.sheet.counts, reading.faults) == ((COUNT, shed), ())
    assert [line.row for line in reading.sheet.counts[0].lines] == [2, 3, 4]


def test_what_was_not_counted_is_left_out_and_zero_is_a_count():
    reading = altered({("Counted", "F3"): None})
    assert reading.sheet.counts == (replace(COUNT, lines=(COUNT.lines[0], COUNT.lines[2])),)


def test_a_place_where_nothing_was_counted_is_no_count():
    reading = altered({("Counted", f"F{row}"): None for row in (2, 3, 4)} | {("Places counted", "B2"): None})
    assert (reading.sheet.counts, reading.faults) == ((), ())


@pytest.mark.parametrize(
    "sheet, cell, value, what",
    [
        ("Counted", "A2", "Crek", "the place 'Crek' is not known"),
        ("Counted", "A2", "Home", "'Home' does not stand on the sheet Places counted"),
        ("Counted", "B4", "C-2", "the colony 'C-2' is not known"),
        ("Counted", "C2", "medium", "the part 'medium' is not known"),
        ("Counted", "D3", None, "this part and condition stands in row 2 already"),
        ("Counted", "F2", "some", "'some' is text, not a number"),
        ("Counted", "F2", -1, "-1 is negative"),
        ("Places counted", "B2", None, "Counted on is empty"),
        ("Places counted", "B2", dt.date(2026, 12, 2), "2026-12-02 is still to come"),
        ("Places counted", "A2", "Crek", "the place 'Crek' is not known"),
    ],
)
def test_what_cannot_be_counted_is_refused(sheet, cell, value, what):
    told = [(one.sheet, one.cell, one.what) for one in altered({(sheet, cell): value}).faults]
    if cell == "D3":
        cell = "C3"
    assert (sheet, cell, what) in told


def test_a_place_stands_once():
    reading = altered({("Places counted", "A3"): "Creek", ("Places counted", "B3"): DAY})
    assert [one.what for one in reading.faults] == ["this place stands in row 2 already"]


def test_a_sheet_to_count_by_asks_for_numbers_and_reads_as_nothing_counted():
    line = LineToCount(part=BOX, booked=12)
    content = count_sheet(
        [ToCount(yard=yard, day=DAY, lines=(line, replace(line, booked=None))) for yard in ("creek", "shed")],
        BOOKS,
    )
    page = load_workbook(io.BytesIO(content))["Counted"]
    assert [[cell.value for cell in row[4:]] for row in page["A2:F5"]] == [[12, None], [None, None]] * 2
    assert [one.id for one in page.row_breaks.brk] == [3]
    reading = read_sheet(content, BOOKS, day=LATER)
    assert (reading.faults, reading.sheet.counts) == ((), ())
