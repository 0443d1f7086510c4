"""The sheet Requirement: weeks down, parts across, yards below one another."""

from openpyxl import Workbook

from planner.plan import report_of
from planner.workbook.requirement import write_requirement
from tests.planner.plan import small


def written(**changed):
    made = report_of(small.operation(), small.assumptions(), small.problem(**changed), small.plan())
    sheet = Workbook().active
    write_requirement(sheet, made, "A4")
    return sheet


def rows(sheet, where):
    return {row[1]: row[3:] for row in sheet.iter_rows(min_row=4, values_only=True) if row[0] == where}


def test_all_yards_are_the_sum_of_the_yards_by_formula():
    sheet = written()
    whole = rows(sheet, "All yards, mean")
    first = min(row for row in range(4, sheet.max_row + 1) if sheet.cell(row, 1).value == "Creek")
    span = f"D${first}:$D${sheet.max_row}"
    assert whole[26][0] == f"=SUMIF($B${first}:$B${sheet.max_row},$B6,${span})"


def test_yards_tell_their_own_weeks_and_no_week_without_a_need():
    sheet = written()
    creek, hill = rows(sheet, "Creek"), rows(sheet, "Hill")
    assert creek[24][0] == 11 and hill[26][0] == 3
    assert 23 not in creek and 25 not in hill
    assert rows(sheet, "All yards, nine seasons of ten at most")[26][0] == 20


def test_each_block_begins_a_page():
    sheet = written()
    ends = {brk.id for brk in sheet.row_breaks.brk}
    starts = [
        row for row in range(5, sheet.max_row + 1) if sheet.cell(row, 1).value != sheet.cell(row - 1, 1).value
    ]
    assert ends == {row - 1 for row in starts}


def test_heads_are_frozen_and_the_table_filters():
    sheet = written()
    assert sheet.freeze_panes == "D4"
    assert sheet.auto_filter.ref == f"A3:E{sheet.max_row}"


def test_a_season_that_asks_for_nothing_is_an_empty_sheet():
    sheet = Workbook().active
    made = report_of(small.operation(), small.assumptions(), small.problem(), small.plan())
    write_requirement(sheet, type(made)(**{**vars(made), "requirement": ()}), "A4")
    assert [cell.value for cell in sheet[3]][:3] == ["Where", "Week", "Starts on"]
    assert not any(cell.value for cell in sheet[4])
