"""The sheet Money: a row a budget, what a hundred earns as a formula, a native chart, what to drop."""

import pytest
from openpyxl import Workbook

from planner.workbook import workbook_of
from planner.workbook.money import write_money
from tests.planner import made
from tests.planner.workbook.opened import labelled, recalculated, written
from tests.planner.workbook.test_book import errors


def sheet(report=None):
    found = Workbook().active
    write_money(found, report or made.make_report(), "A4")
    return found


def test_each_budget_has_its_row_and_a_hundred_more_is_a_formula():
    made_ = sheet()
    assert [cell.value for cell in made_[4]][:4] == [0, 0, 0, 6]
    assert [cell.value for cell in made_[13]] == [
        4500,
        4410,
        6520,
        6526,
        "=100*(C13-C12)/(A13-A12)",
        "this order's budget",
    ]
    assert made_["F10"].value == "the curve bends here"


def test_the_chart_is_native_and_reads_budget_and_earnings_off_the_rows():
    (chart,) = sheet()._charts
    (series,) = chart.series
    assert series.xVal.numRef.f == "'Sheet'!$A$4:$A$15"
    assert series.yVal.numRef.f == "'Sheet'!$C$4:$C$15"


def test_sentences_and_drops_stand_under_the_chart():
    made_ = sheet()
    said = [row[0].value for row in made_.iter_rows(min_row=16) if row[0].value]
    assert said[:3] == list(made.make_budgets().sentences)
    assert "Medium box, flat" in said
    drop = next(row for row in made_.iter_rows(min_row=16) if row[0].value == "Medium box, flat")
    assert [drop[at].value for at in (3, 4, 5)] == [12, 8, "drop 4 packs of 12"]


def test_a_study_out_of_time_is_a_sheet_that_says_so():
    section = made.make_budgets(points=(), less=None, sentences=(), not_told="The time was up.")
    made_ = sheet(made.make_report(budgets=section))
    assert made_._charts == []
    assert "The time was up." in [row[0].value for row in made_.iter_rows()]


def test_the_sheet_is_there_where_budgets_were_asked_and_else_not():
    assert "Money" in written(workbook_of(made.make_report())).sheetnames
    assert "Money" not in written(workbook_of(made.make_report(budgets=None))).sheetnames


@pytest.mark.office
def test_a_spreadsheet_works_out_what_a_hundred_more_earns(office, tmp_path):
    book = recalculated(office, workbook_of(made.make_report()), tmp_path)
    assert book["Money"]["E13"].value == pytest.approx(20)  # 6,520 after 6,420, for 500 more
    assert book["Money"]["E5"].value == pytest.approx(290)
    assert labelled(book["Money"], "Lost a season", 2) == 160
    assert errors(book) == []
