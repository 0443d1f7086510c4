"""Exported, changed as a keeper would, saved by LibreOffice as .xlsx, as .ods and as .xlsx again: every value is kept."""

import datetime as dt
import io
from copy import copy

import pytest
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st
from openpyxl import load_workbook
from openpyxl.utils.datetime import CALENDAR_MAC_1904

from inventory.sheets import Sheet, filled, read_sheet
from inventory.sheets.examples import COUNTS, example
from tests.inventory.sheets.test_reading import BOOKS
from tests.inventory.sheets.workbooks import altered, known, place
from tests.inventory.test_sheets import all_saved_by_office, saved_by_office, sheets

pytestmark = pytest.mark.office
KNOWN = known()
DAY = dt.date(2026, 12, 1)


def through_office(office, folder, content):
    """.xlsx to .xlsx to .ods to .xlsx."""
    files = all_saved_by_office(office, folder, {"sheet": content}, into="ods")
    return all_saved_by_office(office, folder, files, kind="ods", into="xlsx")["sheet"]


def as_keepers_do(book):
    """All that happens to a workbook between its download and its return."""
    gear = book["Gear"]
    gear["A3"].value, gear["D3"].value = None, "5"  # a number as text, format and all
    gear["A3"].value = "shed"
    gear["D4"].value, gear["D4"].number_format = "=8*5", "0.00"
    for _ in range(2):
        gear.insert_rows(4)  # empty rows between
    gear.insert_cols(3)
    gear["C1"].value, gear["C2"].value = "My remark", "on the pallets"
    gear.insert_rows(1)
    gear["A1"].value = "Counted with Robin on a wet evening"
    gear.merge_cells("A1:E1")
    gear.row_dimensions[4].hidden = True
    for row in range(20, 400):
        gear.cell(row, 1).fill = copy(gear["A2"].fill)
        gear.cell(row, 5).number_format = "0"
    colonies = book["Colonies"]
    colonies[place("Colonies", "started_on", 3)].value = "=DATE(2026,5,14)"
    flows = book["Flows"]
    for column in range(1, 7):  # sorted the other way round
        first, second = flows.cell(2, column), flows.cell(3, column)
        first.value, second.value = second.value, first.value
    prices = book["Prices"]
    prices[place("Prices", "price_1", 2)].value = "70,00"
    prices[place("Prices", "price_1", 3)].value = "$39.00"
    prices[place("Prices", "open_until", 2)].value = "31 January 2027"
    prices[place("Prices", "open_until", 2)].number_format = "@"
    suppliers = book["Suppliers"]
    suppliers[place("Suppliers", "free_from", 2)].value = "2,000"
    book.move_sheet("Gear", -4)
    book.move_sheet("Keeper", 5)
    book["Keeper"].sheet_state = "visible"
    book.create_sheet("Honey sold")["A1"] = "mine"


def in_any_order(sheet):
    """The parts of a sheet without the order of their rows."""
    return {
        name: sorted(rows, key=repr) if isinstance(rows, tuple) else rows
        for name, rows in vars(sheet).items()
    }


def test_a_workbook_treated_as_keepers_do_keeps_every_value(office, tmp_path):
    content = through_office(office, tmp_path, altered({}, alter=as_keepers_do))
    reading = read_sheet(content, KNOWN, day=DAY)
    assert reading.faults == ()
    assert in_any_order(reading.sheet) == in_any_order(example())
    assert {note.what for note in reading.notes} == {
        "a row is hidden and read all the same",
        "the column 'My remark' is not read",
        "the sheet is not one of the template's and is not read",
    }


def test_days_of_the_calendar_of_1904_stay_those_days(office, tmp_path):
    def begin_1904(book):
        book.epoch = CALENDAR_MAC_1904
        book["Colonies"][place("Colonies", "started_on", 3)].value = dt.date(2026, 5, 14)
        book["Prices"][place("Prices", "open_until", 2)].value = dt.date(2027, 1, 31)

    content = altered({}, alter=begin_1904)
    assert read_sheet(content, KNOWN).sheet == example()
    assert read_sheet(saved_by_office(office, tmp_path, content), KNOWN).sheet == example()


def test_a_count_sheet_filled_in_is_read_as_it_was_counted(office, tmp_path):
    content = filled(Sheet(counts=COUNTS), BOOKS, kind="count")
    book = load_workbook(io.BytesIO(content))
    book["Counted"]["F2"].value = "=40+1"
    file = io.BytesIO()
    book.save(file)
    reading = read_sheet(through_office(office, tmp_path, file.getvalue()), BOOKS, day=DAY)
    assert (reading.faults, reading.sheet.counts) == ((), COUNTS)


@settings(
    max_examples=1,
    deadline=None,
    phases=[Phase.generate],
    suppress_health_check=list(HealthCheck),
)
@given(st.lists(sheets(), min_size=5, max_size=5))
def test_any_sheet_saved_by_libreoffice_reads_the_same(office, tmp_path_factory, told):
    folder = tmp_path_factory.mktemp("office")
    files = {f"sheet-{number}": filled(one, KNOWN) for number, one in enumerate(told)}
    saved = all_saved_by_office(office, folder, files)
    for one, content in zip(told, saved.values(), strict=True):
        reading = read_sheet(content, KNOWN)
        assert (reading.faults, reading.sheet) == ((), one)
