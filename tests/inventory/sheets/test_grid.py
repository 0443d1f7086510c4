"""Cells as plain values: bounded, formulas by their value, broken files named."""

import datetime as dt
import io

import pytest
from openpyxl import Workbook, load_workbook
from openpyxl.utils.datetime import CALENDAR_MAC_1904
from openpyxl.xml.constants import SHEET_MAIN_NS

from inventory.sheets import grid
from inventory.sheets.faults import Unreadable
from inventory.sheets.grid import Cell, address, grids_of
from tests.inventory.sheets.workbooks import altered, repacked

MARCH = dt.datetime.combine(dt.date(2026, 3, 4), dt.time())


def saved(book):
    file = io.BytesIO()
    book.save(file)
    return file.getvalue()


def with_cell(xml):
    """A workbook whose first sheet has one cell, written as XML."""
    sheet = (
        f'<worksheet xmlns="{SHEET_MAIN_NS}">'
        f'<dimension ref="A1:C900000"/><sheetData><row r="1">{xml}</row></sheetData></worksheet>'
    )
    return repacked(saved(Workbook()), replace={"xl/worksheets/sheet1.xml": sheet})


def first_cell(xml):
    return grids_of(with_cell(xml))[0].rows[0][0]


def test_addresses_are_those_of_the_spreadsheet():
    assert (address(3, 2), address(10, 28)) == ("B3", "AB10")


def test_a_formula_is_taken_by_the_value_it_last_came_to():
    assert first_cell('<c r="A1"><f>1+1</f><v>2</v></c>') == Cell(value=2, is_formula=True)


def test_a_formula_never_worked_out_has_no_value_and_is_not_empty():
    cell = first_cell('<c r="A1"><f>1+1</f></c>')
    assert (cell.value, cell.is_formula, cell.is_empty) == (None, True, False)


def test_an_error_is_told_from_text():
    assert first_cell('<c r="A1" t="e"><v>#REF!</v></c>').is_error
    assert not first_cell('<c r="A1" t="inlineStr"><is><t>#REF!</t></is></c>').is_error


def test_text_like_a_formula_is_text():
    cell = first_cell('<c r="A1" t="inlineStr"><is><t>=1+1</t></is></c>')
    assert (cell.value, cell.is_formula) == ("=1+1", False)


def test_the_size_a_file_states_is_not_believed():
    assert len(grids_of(with_cell('<c r="A1"><v>1</v></c>'))[0].rows) == 1


def test_blank_text_is_empty():
    assert Cell(value="  ").is_empty and Cell().is_empty and not Cell(value=0).is_empty


def test_rows_and_columns_are_bounded_and_going_on_is_said(monkeypatch):
    monkeypatch.setattr(grid, "MOST_ROWS", 5)
    monkeypatch.setattr(grid, "MOST_COLUMNS", 3)
    book = Workbook()
    book.active.cell(5, 3, "the last one read")
    book.active.cell(5, 90, "far right")
    short = grids_of(saved(book))[0]
    book.active.cell(700_000, 1, "far below")
    long = grids_of(saved(book))[0]
    assert (len(short.rows), len(short.rows[-1]), short.goes_on) == (5, 3, False)
    assert (len(long.rows), long.goes_on) == (5, True)


@pytest.mark.parametrize(
    "name, markup",
    [
        ("xl/workbook.xml", "<workbook>"),
        ("xl/worksheets/sheet1.xml", "<worksheet><sheetData><row"),
        ("xl/styles.xml", "<a>"),
        ("xl/_rels/workbook.xml.rels", "<Relationships/>"),
    ],
)
def test_a_workbook_broken_inside_is_damaged(name, markup):
    with pytest.raises(Unreadable) as refusal:
        grids_of(repacked(altered({}), replace={name: markup}))
    assert refusal.value.fault.what == "The file is damaged"


def test_an_entity_is_never_followed():
    bomb = '<?xml version="1.0"?><worksheet><sheetData>&lol;</sheetData></worksheet>'
    with pytest.raises(Unreadable):
        grids_of(repacked(altered({}), replace={"xl/worksheets/sheet1.xml": bomb}))


def test_the_library_of_others_reads_the_same_cells():
    """openpyxl, another reader, cell by cell, over a workbook of all kinds of values."""
    book = Workbook()
    sheet, begun = book.active, MARCH
    values = [
        1,
        2.5,
        -3e10,
        "x",
        " a b ",
        True,
        False,
        begun,
        dt.time(6, 30),
        "ß\nü",
        "=1+1",
        "1e3",
        "\u05d0",
    ]
    for row, value in enumerate(values, 1):
        sheet.cell(row, 1 + row % 3, value)
    content = saved(book)
    other = load_workbook(io.BytesIO(content), data_only=True).active
    for number, row in enumerate(grids_of(content)[0].rows, 1):
        assert [cell.value for cell in row] == [one.value for one in other[number][: len(row)]]


def test_a_day_of_the_calendar_of_1904_is_that_day():
    book = Workbook()
    book.epoch = CALENDAR_MAC_1904
    book.active["A1"] = MARCH
    assert grids_of(saved(book))[0].rows[0][0].value == MARCH


def test_only_the_sheets_wanted_are_read():
    book = Workbook()
    book.active["A1"] = 1
    book.create_sheet("Mine")["A1"] = 2
    grids = grids_of(saved(book), wanted=lambda title: title == "Mine")
    assert [(grid.title, len(grid.rows)) for grid in grids] == [("Sheet", 0), ("Mine", 1)]


def test_hidden_rows_and_cells_merged_downwards_are_told():
    book = Workbook()
    book.active["A1"], book.active["B3"] = "head", 1
    book.active.row_dimensions[3].hidden = True
    book.active.merge_cells("A1:A2")
    book.active.merge_cells("C1:D1")
    (grid_told,) = grids_of(saved(book))
    assert (grid_told.hidden, grid_told.merged) == ((3,), ((0, 1, 2),))


def test_filled_cells_are_bounded(monkeypatch):
    monkeypatch.setattr(grid, "MOST_CELLS", 1)
    with pytest.raises(Unreadable) as refusal:
        grids_of(with_cell('<c r="A1"><v>1</v></c><c><v>2</v></c>'))
    assert refusal.value.fault.what == "The workbook has more than 1 filled cells"
