"""Keeper, yards and flows against each other and against the books."""

import pytest

from tests.inventory.sheets.workbooks import known, only_fault, read


def test_a_second_keeper_is_refused():
    fault = only_fault({("Keeper", "name", 3): "Somebody Else"})
    assert (fault.cell, fault.what) == ("A3", "there is a second row")


def test_a_code_may_be_left_empty_and_is_made_of_the_name():
    sheet = read({("Yards", "code", 3): None}).sheet
    assert [yard.code for yard in sheet.yards] == ["shed", "mill-field-invented"]
    assert {row.yard for row in sheet.flows} == {"mill-field-invented"}


def test_an_empty_code_is_the_one_the_books_have_for_that_name():
    books = known(yards={"mf": "Mill field (INVENTED)"}, stands={"mf": 3})
    assert read({("Yards", "code", 3): None}, of=books).sheet.yards[1].code == "mf"


@pytest.mark.parametrize(
    "changes, cell, what",
    [
        ({("Yards", "name", 4): " SHED"}, "A4", "'SHED' stands in row 2 already"),
        (
            {("Yards", "name", 4): "Other", ("Yards", "code", 4): "shed"},
            "B4",
            "the code 'shed' belongs to row 2 already",
        ),
        ({("Yards", "name", 4): "数"}, "A4", "no code can be made of '数'"),
        ({("Yards", "is_shed", 3): "yes"}, "C3", "row 2 is the shed already"),
        ({("Yards", "is_shed", 2): None}, "column Shed", "no row is marked as the shed"),
        ({("Yards", "is_shed", 3): "perhaps"}, "C3", "'perhaps' is neither yes nor no"),
        ({("Yards", "stands", 3): -1}, "E3", "-1 is negative"),
        ({("Yards", "stands", 3): 12.5}, "E3", "12.5 is not a whole number"),
        ({("Flows", "yard", 2): "Milfield"}, "A2", "the yard 'Milfield' is not known"),
        ({("Flows", "name", 3): "clover"}, "B3", "'clover' of this yard stands in row 2 already"),
        ({("Flows", "first_week", 2): 54}, "C2", "54 is out of range"),
        ({("Flows", "gain_lb", 2): -60}, "E2", "-60 is negative"),
    ],
)
def test_what_cannot_be_is_refused_with_its_cell(changes, cell, what):
    fault = only_fault(changes)
    assert (fault.cell, fault.what) == (cell, what)


def test_an_unknown_yard_comes_with_the_nearest_name():
    assert only_fault({("Flows", "yard", 2): "Mill Feild (invented)"}).remedy == (
        "Did you mean 'Mill Field (invented)'? Write that"
    )


def test_an_unknown_yard_far_from_all_is_sent_to_the_sheet_of_yards():
    assert only_fault({("Flows", "yard", 2): "Xyzzyx"}).remedy.startswith("Add it to the sheet Yards")


def test_another_shed_than_the_books_have_is_refused():
    books = known(yards={"barn": "Barn"}, stands={"barn": 0}, shed="barn")
    fault = only_fault(of=books)
    assert (fault.cell, fault.what) == ("C2", "the books have 'Barn' as the shed")


def test_a_name_the_books_know_by_another_code_is_refused():
    books = known(yards={"mf": "Mill Field (invented)"}, stands={"mf": 3})
    fault = only_fault(of=books)
    assert (fault.cell, fault.what) == ("B3", "the books know 'Mill Field (invented)' by the code 'mf'")


def test_a_yard_of_the_books_may_be_named_without_its_row():
    books = known(yards={"ridge": "Ridge"}, stands={"ridge": 9})
    assert read({("Flows", "yard", 2): "ridge"}, of=books).sheet.flows[0].yard == "ridge"


def test_a_flow_may_wrap_over_the_new_year():
    flow = read({("Flows", "first_week", 2): 50, ("Flows", "last_week", 2): 3}).sheet.flows[0]
    assert (flow.first_week, flow.last_week) == (50, 3)


def test_where_no_yard_could_be_read_the_sheet_says_so_once_not_each_row_that_names_one():
    reading = read({("Yards", "name", 1): "Apiary"})
    assert reading.sheet is None
    assert {(fault.sheet, fault.what) for fault in reading.faults} == {
        ("Yards", "the heading 'Yard' is missing"),
        ("Yards", "no row is marked as the shed"),
    }
