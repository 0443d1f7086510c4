"""The sheet Bad years: a row a weight, differences as formulas, a chart."""

from openpyxl import Workbook

from planner.workbook import workbook_of
from planner.workbook.bad_years import write_bad_years
from tests.planner import made
from tests.planner.workbook.opened import written


def test_what_a_weight_costs_and_gains_is_a_formula_over_the_first_row():
    sheet = Workbook().active
    write_bad_years(sheet, made.make_report(), "A4")
    assert [cell.value for cell in sheet[4]] == [0.0, 4074, 6520, 1210, "=C$4-C4", "=D4-D$4", "this order"]
    assert [cell.value for cell in sheet[6]][:6] == [0.95, 3300, 6210, 1560, "=C$4-C6", "=D6-D$4"]
    assert len(sheet._charts) == 1
    said = [row[0].value for row in sheet.iter_rows(min_row=20) if row[0].value]
    assert said == list(made.make_bad_years().sentences)


def test_the_sheet_is_there_where_the_curve_was_drawn_and_else_not():
    assert "Bad years" in written(workbook_of(made.make_report())).sheetnames
    assert "Bad years" not in written(workbook_of(made.make_report(bad_years=None))).sheetnames
