"""A large sheet is written and read back with nothing lost, and timed."""

import inventory.bench.sheets
from inventory.bench.sheets import invented_stock, there_and_back
from inventory.sheets import Sheet


def test_as_many_rows_are_invented_as_asked_no_two_alike():
    sheet, known = invented_stock(200)
    assert len({(row.yard, row.part) for row in sheet.gear}) == 200
    assert {row.part for row in sheet.gear} == set(known.parts) and len(known.yards) == 3


def test_a_sheet_goes_there_and_back():
    found = there_and_back(rows=200)
    assert found["lost"] == 0
    assert all(found[key] > 0 for key in ("write", "read", "write_cpu", "read_cpu", "megabytes"))


def test_rows_that_come_back_otherwise_are_told(monkeypatch):
    stock = invented_stock(200)
    monkeypatch.setattr(inventory.bench.sheets, "filled", lambda sheet, known, kind: b"")
    monkeypatch.setattr(inventory.bench.sheets, "invented_stock", lambda rows: (Sheet(), stock[1]))
    assert there_and_back(rows=200)["lost"] == 200
