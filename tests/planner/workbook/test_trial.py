"""The sheet Trial: a row an order, what is compared, and the sentences."""

from decimal import Decimal

from openpyxl import Workbook

from planner.workbook import workbook_of
from planner.workbook.trial import HEADS, write_trial
from planner.yardform import not_told
from tests.planner import made
from tests.planner.workbook.opened import written


def test_each_order_has_its_figures_and_the_one_compared_with_none_against_itself():
    sheet = Workbook().active
    write_trial(sheet, made.make_report(), "Letter")
    rows = {row[0].value: [cell.value for cell in row] for row in sheet.iter_rows(min_row=4, max_row=8)}
    ours = dict(zip(HEADS, rows["This order: how this order is found"], strict=True))
    assert (ours["Spent now"], ours["Mean season"], ours["Worst of twenty"]) == (4074, 6500, 2100)
    assert (ours["19 seasons of 20: from"], ours["to"], ours["Seasons tried"]) == (Decimal(-200), 2650, 300)
    yours = rows["Your usual order: how your usual order is found"]
    assert yours[5:9] == [None] * 4
    said = [row[0].value for row in sheet.iter_rows(min_row=9, max_row=12) if row[0].value]
    assert said == list(made.make_trial().sentences)


def test_the_worth_told_by_yard_stands_beside_the_pools_with_a_formula_between():
    sheet = Workbook().active
    write_trial(sheet, made.make_report(), "Letter")
    rows = [[cell.value for cell in row] for row in sheet.iter_rows(min_row=9)]
    at = next(number for number, row in enumerate(rows) if row[0] == "Hauling told yard by yard")
    told, number = rows[at + 1], 9 + at + 1
    assert told[1:4] == [Decimal(6480), Decimal(6510), f"=C{number}-B{number}"]
    assert told[-1] == 60
    assert rows[at + 2][0] == made.make_trial().by_yard.said


def test_an_order_not_judged_by_yard_has_only_the_sentence():
    trial = made.make_trial(by_yard=not_told("the time allowed ran out"))
    sheet = Workbook().active
    write_trial(sheet, made.make_report(trial=trial), "Letter")
    first = [row[0].value for row in sheet.iter_rows()]
    assert "Hauling told yard by yard" not in first
    assert first[-1].startswith("Not judged yard by yard: the time allowed ran out.")


def test_the_sheet_is_there_where_the_order_was_tried_and_else_not():
    assert "Trial" in written(workbook_of(made.make_report())).sheetnames
    assert "Trial" not in written(workbook_of(made.make_report(trial=None))).sheetnames
