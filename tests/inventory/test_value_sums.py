"""Rows and sums of the pages in money."""

import datetime as dt
from decimal import Decimal

import pytest

from inventory import ledger
from inventory.ledger import Line
from inventory.value import Convention
from inventory.value_sums import value_sheet, wear_sheet, write_offs, year_sheet
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY
DAYS = {"first": dt.date(2025, 1, 1), "last": dt.date(2025, 12, 31)}


@pytest.fixture
def shed(db):
    shed = makers.make_shed()
    makers.put(shed, {"stand": 4, "box-deep-10": 2})
    ledger.burn(at=shed, lines=[Line("stand", 1)], day=DAY, who=None, key="burn")
    return shed


def test_value_by_part_boxes_first_beside_the_list(shed):
    sheet = value_sheet(as_of=DAY)
    assert [(row.name, row.amount.pieces) for row in sheet.rows] == [
        ("Deep box, 10 frames", 2),
        ("Hive stand", 3),
    ]
    assert sheet.whole.value == sheet.list_value == Decimal("115.00")


def test_a_year_adds_up(shed):
    sheet = year_sheet(**DAYS)
    assert sum(row.amount.closing.cents for row in sheet.rows) == sheet.whole.closing.cents == 11500


def test_write_offs_add_up(shed):
    sheet = write_offs(**DAYS)
    assert [(reason.why, reason.whole.cents) for reason in sheet.reasons] == [("burnt", 2100)]
    assert (sheet.whole.cents, sheet.taken_cents, sheet.used.rows) == (2100, 0, [])


def test_the_schedule_adds_up(shed):
    sheet = wear_sheet(year=2025, convention=Convention())
    assert sheet.charge == Decimal("8.90")  # 3 stands of 21.00 over 10 years, 2 boxes of 26.00 over 20
    assert sheet.whole.net_cents == sum(row.amount.net_cents for row in sheet.rows)
