"""The sheet Trial: a row an order, what is compared, and the sentences."""

from decimal import Decimal

from openpyxl import Workbook

from planner.workbook import workbook_of
from planner.workbook.trial import HEADS, write_trial
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
    said = [row[0].value for row in sheet.iter_rows(min_row=9) if row[0].value]
    assert said == list(made.make_trial().sentences)


def test_the_sheet_is_there_where_the_order_was_tried_and_else_not():
    assert "Trial" in written(workbook_of(made.make_report())).sheetnames
    assert "Trial" not in written(workbook_of(made.make_report(trial=None))).sheetnames
