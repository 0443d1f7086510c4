"""Past winters: in and out, by yard or of them all, checked against each other."""

import datetime as dt

import pytest

from inventory.sheets import WinterRow
from inventory.sheets.cells import Winter
from inventory.sheets.faults import Misread
from tests.inventory.sheets.workbooks import faults, read

DAY = dt.date(2026, 12, 1)


def cells(row, **values):
    return {("Winters", key, row): value for key, value in values.items()}


@pytest.mark.parametrize("value", [2024, 2024.0, "2024", "2024/25", " 2024 / 2025 ", "2024-25", "2024–25"])
def test_a_winter_is_the_year_it_began(value):
    assert Winter().read(value) == 2024


@pytest.mark.parametrize(
    "value", ["last", 24, "2024/26", "24/25", dt.date(2024, 11, 1), 1899, "2024/2025/2026"]
)
def test_what_is_no_winter_is_refused(value):
    with pytest.raises(Misread) as refusal:
        Winter().read(value)
    assert refusal.value.remedy


def test_it_works():
    assert read(day=DAY).sheet.winters == (
        WinterRow(autumn=2023, went_in=12, came_out=9),
        WinterRow(autumn=2024, yard="mill-field", went_in=10, came_out=6),
    )


@pytest.mark.parametrize(
    "changed, cell, what",
    [
        ({"came_out": 13}, "D2", "13 came out of 12 that went in: that is more than there were"),
        ({"autumn": 2027}, "A2", "the winter of 2027 is still to come"),
        ({"went_in": 0}, "C2", "0 is out of range"),
        ({"yard": "Mil Field (invented)"}, "B2", "the yard 'Mil Field (invented)' is not known"),
        ({"autumn": 2024, "yard": "mill-field"}, "A3", "this winter stands in row 2 already"),
        ({"autumn": 2024, "came_out": 5}, "row 2", "the yards of this winter add up to 6 out, more than 5"),
        ({"autumn": 2024, "went_in": 9}, "row 2", "the yards of this winter add up to 10 in, more than 9"),
    ],
)
def test_what_does_not_add_up_is_refused(changed, cell, what):
    assert [one[:3] for one in faults(cells(2, **changed), day=DAY)] == [("Winters", cell, what)]
