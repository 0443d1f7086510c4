"""The sheet Why: figures and reason of each line."""

from openpyxl import Workbook

from planner.plan import report_of
from planner.workbook.why import HEADS, write_why
from tests.planner import made as invented
from tests.planner.plan import small


def test_each_line_has_its_figures_and_under_them_its_reason():
    made = report_of(small.operation(), small.assumptions(), small.problem(), small.plan())
    sheet = Workbook().active
    write_why(sheet, made, "A4")
    figures = dict(zip(HEADS, [cell.value for cell in sheet[4]], strict=True))
    assert figures["Units bought"] == 10
    assert [figures[head] for head in ("Sound in store", "To mend", "Held back", "On colonies")] == [
        10,
        2,
        1,
        12,
    ]
    assert [figures[head] for head in ("Asked for, mean", "Nine of ten at least", "Nine of ten at most")] == [
        14,
        8,
        20,
    ]
    assert figures["Short in … of 100 without"] == 50
    assert figures["Most in use"] == "early June at Creek and Hill"
    assert sheet["B5"].value == made.lines[0].why.text
    assert sheet.row_dimensions[5].height > 28
    assert "B5:R5" in [str(span) for span in sheet.merged_cells.ranges]


def test_a_pack_more_and_a_pack_fewer_stand_in_money_and_in_words():
    sheet = Workbook().active
    write_why(sheet, invented.make_report(), "A4")
    figures = dict(zip(HEADS, [cell.value for cell in sheet[4]], strict=True))
    assert [figures[head] for head in HEADS[13:17]] == [71, 40, 71, 113]
    assert (
        "One pack of 5 more costs $71 and should earn $40, so leave it; one fewer saves $71"
        in sheet["B5"].value
    )


def test_a_move_that_cannot_be_has_no_figures():
    line = invented.make_report().lines[0]
    moves = (invented.make_move(can_be=False, said="cannot be had: 12 is the most that may be ordered"),)
    why = line.why.__class__(**{**vars(line.why), "moves": moves})
    report = invented.make_report()
    order = report.orders[0]
    lines = (line.__class__(**{**vars(line), "why": why}), *order.lines[1:])
    sheet = Workbook().active
    write_why(sheet, invented.make_report(orders=(order.__class__(**{**vars(order), "lines": lines}),)), "A4")
    assert [cell.value for cell in sheet[4]][13:17] == [None] * 4
    assert "cannot be had: 12 is the most" in sheet["B5"].value
