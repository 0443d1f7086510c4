"""The whole workbook: not ours at all, sheets missing or strange, all faults at once."""

import datetime as dt
from dataclasses import replace

import pytest

from inventory.sheets import Sheet, filled, read_sheet, template
from inventory.sheets.examples import COUNTS, example
from inventory.sheets.kinds import KINDS
from inventory.sheets.layout import TABLES
from tests.inventory.sheets.workbooks import altered, faults, known, only_fault, read, repacked

FRESH = vars(Sheet())
FIELD_OF = {table.title: table.title.lower() for table in TABLES if table.title != "Kits"}
FIELD_OF |= {"Prices": "offers", "Places counted": "counts"}


def test_the_example_reads_as_it_was_written():
    reading = read()
    assert (reading.sheet, reading.faults, reading.notes) == (example(), (), ())


def test_the_template_lacks_only_the_keeper_and_the_shed():
    reading = read_sheet(template(known()), known())
    assert [(one.sheet, one.what) for one in reading.faults] == [
        ("Keeper", "nobody is named"),
        ("Yards", "no row is marked as the shed"),
    ]


def test_books_with_keeper_and_shed_take_the_empty_template():
    books = known(has_keeper=True, shed="shed", yards={"shed": "Shed"}, stands={"shed": 0})
    reading = read_sheet(template(books), books)
    assert reading.faults == () and reading.sheet.keeper is None


def test_a_file_that_cannot_be_opened_is_one_fault_of_the_file():
    reading = read_sheet(b"tag,yard\n", known())
    (fault,) = reading.faults
    assert reading.sheet is None and (fault.sheet, fault.cell) == ("", "")
    assert str(fault).startswith("This is a text file (.csv or the like) with another name. Open it in")


def test_a_workbook_of_something_else_is_told_to_start_from_the_template():
    def rename(book):
        for table in TABLES:
            book[table.title].title = f"x{table.title}x"

    fault = only_fault(alter=rename)
    assert (
        fault.what.startswith("None of the sheets Keeper, Yards")
        and fault.remedy == "Start from the template"
    )


def test_a_misspelled_sheet_is_a_fault_and_a_missing_one_is_not():
    def rename(book):
        book["Kits"].title = "Kit list"
        book["Suppliers"].title = "Supliers"

    told = faults(alter=rename)
    assert ("Suppliers", "", "the sheet is missing", "Rename the sheet 'Supliers'") in told
    assert not [
        row for row in told if row[0] == "Kits"
    ]  # it may be missing, and is not read under another name


def test_a_sheet_of_the_keepers_own_is_noted_and_the_guide_is_not():
    notes = read(alter=lambda book: book.create_sheet("Honey sales")).notes
    assert [(one.sheet, one.what) for one in notes] == [
        ("Honey sales", "the sheet is not one of the template's and is not read")
    ]


def test_all_faults_come_at_once_in_the_order_of_the_workbook_each_with_its_cell():
    told = faults(
        {
            ("Yards", "stands", 3): "many",
            ("Colonies", "started_on", 3): "03/04/2026",
            ("Gear", "quantity", 2): -4,
            ("Gear", "part", 3): "medum box, 10 frames",
            ("Prices", "price_1", 2): 70.005,
        }
    )
    assert [(sheet, cell) for sheet, cell, *_ in told] == [
        ("Yards", "E3"),
        ("Colonies", "F3"),
        ("Gear", "D2"),
        ("Gear", "B3"),
        ("Prices", "F2"),
    ]
    assert all(what and remedy for _, _, what, remedy in told)


@pytest.mark.parametrize("table", TABLES, ids=lambda table: table.title)
def test_each_sheet_with_wrong_headings_says_so(table):
    def rename(book):
        for cell in book[table.title][1]:
            cell.value = f"{cell.value} of mine, quite another thing"

    told = faults(alter=rename)
    assert (table.title, "A1", "has no headings") in [row[:3] for row in told]


@pytest.mark.parametrize("table", TABLES, ids=lambda table: table.title)
def test_each_needed_heading_that_is_missing_is_named(table):
    for at, column in enumerate(table.columns, 1):
        if column.needed and len([one for one in table.columns if one.needed]) > 1:
            told = faults(alter=lambda book, at=at: book[table.title].delete_cols(at))
            assert (table.title, "row 1", f"the heading {column.heading!r} is missing") in [
                row[:3] for row in told
            ]


def test_a_fault_in_one_yard_is_not_repeated_by_the_sheets_that_name_it():
    assert [row[:2] for row in faults({("Yards", "miles", 3): "far"})] == [("Yards", "G3")]


def test_formulas_in_the_file_are_faults_where_they_were_never_worked_out():
    fault = only_fault({("Gear", "quantity", 2): "=40+2"})
    assert (fault.sheet, fault.cell) == ("Gear", "D2")
    assert str(fault) == "Gear D2: holds a formula that was never worked out. Type the value itself."


def test_the_workbook_may_be_read_without_a_day():
    assert read_sheet(altered({}), known()).sheet == example()


BOOKS = known(
    has_keeper=True,
    shed="shed",
    yards={"shed": "Shed", "mill-field": "Mill Field (invented)"},
    stands={"shed": 0, "mill-field": 16},
    suppliers={"example": "Example Joinery (invented)"},
    colonies={"M-01": "mill-field"},
)


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.code)
def test_each_matter_is_read_back_alone(kind):
    told = replace(example(), counts=COUNTS)
    reading = read_sheet(filled(told, BOOKS, kind=kind.code), BOOKS, day=dt.date(2026, 12, 1))
    assert (reading.faults, reading.notes) == ((), ())
    fields = [FIELD_OF[table.title] for table in kind.tables if table.title in FIELD_OF]
    for field in vars(told):
        assert getattr(reading.sheet, field) == (getattr(told, field) if field in fields else FRESH[field])


def test_a_sheet_that_is_missing_from_all_of_them_is_told_and_left_as_the_books_have_it():
    def take_out(book):
        del book["Gear"]

    reading = read(alter=take_out)
    assert reading.faults == () and reading.sheet.gear == ()
    assert [str(note) for note in reading.notes] == [
        "Not in the workbook, and so left as the books have it: Gear."
    ]


@pytest.mark.parametrize(
    "kind, told",
    [
        ("opening", [("Gear", "no yard is known yet")]),
        ("prices", []),
        ("count", [("Places counted", "no yard is known yet")]),
    ],
)
def test_a_matter_alone_that_names_yards_wants_them_known(kind, told):
    content = filled(replace(example(), counts=COUNTS), BOOKS, kind=kind)
    assert [(one.sheet, one.what) for one in read_sheet(content, known()).faults] == told


def test_prices_without_any_supplier_say_so_once():
    def take_out(book):
        for table in TABLES:
            if table.title not in ("Prices", "Kits"):
                del book[table.title]

    assert faults(alter=take_out) == [
        ("Prices", "", "no supplier is known yet", "Add the sheet Suppliers, with a row for each of them")
    ]


def test_a_workbook_that_reads_others_says_so():
    content = repacked(altered({}), add={"xl/externalLinks/externalLink1.xml": "<externalLink/>"})
    reading = read_sheet(content, known())
    assert reading.sheet == example()
    assert [str(note) for note in reading.notes] == [
        "The workbook reads other files; what it last showed of them is taken."
    ]
