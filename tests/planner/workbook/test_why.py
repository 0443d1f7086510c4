"""The sheet Why: figures and reason of each line."""

from openpyxl import Workbook

from planner.plan import report_of
from planner.workbook.why import HEADS, write_why
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
    assert "B5:N5" in [str(span) for span in sheet.merged_cells.ranges]
