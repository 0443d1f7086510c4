"""The sheet Beliefs: a row an end, the dearer end a formula, how to find out; no sheet where it was not checked."""

from dataclasses import replace

from planner.workbook import workbook_of
from tests.planner import made
from tests.planner.beliefs.samples import make_section
from tests.planner.workbook.opened import written


def test_every_end_has_its_row():
    sheet = written(workbook_of(replace(made.make_report(), beliefs=make_section())))["Beliefs"]
    assert sheet["A4"].value == "Colonies that come through the winter"
    assert [sheet[f"C{row}"].value for row in (4, 5, 6)] == ["55 %", "85 %", "85 %"]
    assert [sheet[f"D{row}"].value for row in (4, 5)] == [140, 60]
    assert sheet["H4"].value == "=MAX(D4:D5)" and sheet["H6"].value == "=MAX(D6:D6)"
    assert sheet["G4"].value == 1
    assert sheet["I4"].value.startswith("Count the living hives")


def test_an_order_not_checked_has_no_such_sheet():
    assert "Beliefs" not in written(workbook_of(made.make_report())).sheetnames
