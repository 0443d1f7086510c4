"""Faults and notes in the order in which a keeper goes through the workbook."""

from inventory.sheets.findings import Findings


def test_they_come_by_sheet_then_row_then_column_and_whole_sheets_first():
    findings = Findings()
    told = [("Gear", "B3"), ("Gear", "AA2"), ("Gear", "C2"), ("Gear", "row 1"), ("Gear", ""), ("Yards", "A9")]
    for sheet, cell in [("Own", "A1"), *told, ("", "")]:
        findings.fault(sheet, cell, "what", "remedy")
    faults, notes = findings.in_order(["Yards", "Gear"])
    assert [(one.sheet, one.cell) for one in faults] == [
        ("", ""),
        ("Yards", "A9"),
        ("Gear", ""),
        ("Gear", "row 1"),
        ("Gear", "C2"),
        ("Gear", "AA2"),
        ("Gear", "B3"),
        ("Own", "A1"),
    ]
    assert notes == ()
