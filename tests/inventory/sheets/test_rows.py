"""Headings matched by text in any order; what is missing, strange or twice is said with its cell."""

import pytest

from inventory.sheets.findings import Findings
from inventory.sheets.grid import Cell, Grid
from inventory.sheets.layout import FLOWS
from inventory.sheets.rows import rows_of

HEADS = ["Yard", "Flow", "First week", "Last week", "Gain, lb", "Spread"]
GOOD = ["Creek", "Clover", 23, 28, 60, 0.4]


def rows(*lines, goes_on=False):
    findings = Findings()
    cells = tuple(tuple(one if isinstance(one, Cell) else Cell(value=one) for one in line) for line in lines)
    read = rows_of(FLOWS, Grid(title="Flows", rows=cells, goes_on=goes_on), findings)
    return read, [(one.cell, one.what) for one in findings.faults], [one.what for one in findings.notes]


def test_columns_may_stand_in_any_order_under_headings_in_any_case():
    heads = [head.upper() + " *" for head in reversed(HEADS)]
    (row,), faults, notes = rows(heads, list(reversed(GOOD)))
    assert (faults, notes) == ([], [])
    assert row.values["name"] == "Clover" and row.cells["name"] == "E2"


def test_a_title_above_the_headings_does_no_harm():
    (row,), faults, _ = rows(["Our flows of 2026"], [], HEADS, GOOD)
    assert faults == [] and row.number == 4


def test_a_sheet_without_headings_says_which_belong_there():
    read, faults, _ = rows(GOOD)
    assert (read, faults) == ([], [("A1", "has no headings")])


def test_an_empty_sheet_has_no_headings_either():
    assert rows() == ([], [("A1", "has no headings")], [])


def test_a_missing_heading_is_a_fault_and_an_optional_one_is_not():
    read, faults, _ = rows(HEADS[:4], GOOD[:4])
    assert faults == [("row 1", "the heading 'Gain, lb' is missing")]
    assert "gain_lb" not in read[0].values and read[0].values["spread"] == FLOWS.columns[-1].empty


def test_a_heading_spelled_nearly_right_is_a_fault_even_where_it_is_optional():
    _, faults, notes = rows([*HEADS[:5], "Spraed"], GOOD)
    assert (faults, notes) == ([("F1", "the heading 'Spraed' is not known")], [])


def test_a_column_of_the_keepers_own_is_noted_and_not_read():
    (row,), faults, notes = rows([*HEADS, "Remarks"], [*GOOD, "wet"])
    assert (faults, notes) == ([], ["the column 'Remarks' is not read"])
    assert "wet" not in row.values.values()


def test_a_heading_twice_is_a_fault():
    _, faults, _ = rows([*HEADS, "Flow"], [*GOOD, "Clover"])
    assert faults == [("G1", "the heading 'Flow' stands here a second time")]


def test_empty_rows_are_passed_over_and_numbers_are_those_of_the_sheet():
    read, faults, _ = rows(HEADS, [], [None, "  "], GOOD, [])
    assert ([row.number for row in read], faults) == ([4], [])


def test_every_bad_cell_of_a_row_is_told():
    (row,), faults, _ = rows(HEADS, ["Creek", None, "soon", 60, -1, "x"])
    assert faults == [
        ("B2", "Flow is empty"),
        ("C2", "'soon' is text, not a number"),
        ("D2", "60 is out of range"),
        ("E2", "-1 is negative"),
        ("F2", "'x' is text, not a number"),
    ]
    assert row.values == {"yard": "Creek"} and not row.whole(["yard", "name"])


@pytest.mark.parametrize(
    "cell, what",
    [
        (Cell(is_formula=True), "holds a formula that was never worked out"),
        (Cell(value="#DIV/0!", is_error=True), "shows the error #DIV/0!"),
        (Cell(value="#REF!", is_formula=True, is_error=True), "shows the error #REF!"),
    ],
)
def test_formulas_without_a_value_and_errors_are_faults(cell, what):
    _, faults, _ = rows(HEADS, [*GOOD[:4], cell])
    assert faults == [("E2", what)]


def test_a_formula_with_a_value_is_read_by_it():
    (row,), faults, _ = rows(HEADS, [*GOOD[:4], Cell(value=61.5, is_formula=True)])
    assert faults == [] and row.values["gain_lb"] * 2 == 123


def test_a_sheet_that_goes_on_beyond_what_is_read_is_a_fault():
    _, faults, _ = rows(HEADS, GOOD, goes_on=True)
    assert faults == [("row 3", "the sheet goes on past row 2")]


def test_headings_merged_over_two_rows_are_those_of_both():
    findings = Findings()
    group = ["Yard", "Flow", "Weeks", None, "Gain, lb", "Spread"]
    below = [None, None, "First week", "Last week"]
    cells = tuple(tuple(Cell(value=one) for one in line) for line in (group, below, GOOD))
    merged = tuple((column, 1, 2) for column in (0, 1, 4, 5))
    (row,) = rows_of(FLOWS, Grid(title="Flows", rows=cells, merged=merged), findings)
    assert (findings.faults, row.number) == ([], 3)
    assert row.values["last_week"] == 28 and row.values["spread"] * 10 == 4


def test_a_value_merged_over_several_rows_is_a_fault_and_a_hidden_row_is_told():
    findings = Findings()
    cells = tuple(tuple(Cell(value=one) for one in line) for line in (HEADS, GOOD, GOOD))
    rows_of(FLOWS, Grid(title="Flows", rows=cells, merged=((0, 2, 3), (30, 2, 3)), hidden=(3,)), findings)
    assert [(one.cell, one.what) for one in findings.faults] == [("A2", "is merged over the rows 2 to 3")]
    assert [str(note) for note in findings.notes] == ["Flows row 3: a row is hidden and read all the same."]
