"""The invented keeper's sheet: the same from the same seed, whole, and marked as invented throughout."""

import datetime as dt
import json

import pytest
from django.conf import settings

from planner.demo.sheet import sheet_of

DAY, ORDER_DAY = dt.date(2026, 3, 1), dt.date(2026, 11, 15)


@pytest.fixture
def scenario():
    return json.loads((settings.BASE_DIR / "fixtures" / "demo.json").read_text(encoding="utf-8"))


def test_the_same_seed_gives_the_same_sheet_and_another_another(scenario):
    first = sheet_of(scenario, day=DAY, order_day=ORDER_DAY, seed=1)
    assert first == sheet_of(scenario, day=DAY, order_day=ORDER_DAY, seed=1)
    assert first != sheet_of(scenario, day=DAY, order_day=ORDER_DAY, seed=2)


def test_it_is_an_operation_of_eight_yards_a_shed_and_about_110_colonies(scenario):
    sheet = sheet_of(scenario, day=DAY, order_day=ORDER_DAY, seed=1)
    assert len([yard for yard in sheet.yards if not yard.is_shed]) == 8
    assert len([yard for yard in sheet.yards if yard.is_shed]) == 1
    assert 105 <= len(sheet.colonies) <= 115
    assert len(sheet.suppliers) == 3


def test_no_yard_holds_more_colonies_than_stands(scenario):
    sheet = sheet_of(scenario, day=DAY, order_day=ORDER_DAY, seed=1)
    for yard in sheet.yards:
        assert sum(colony.yard == yard.code for colony in sheet.colonies) <= yard.stands or yard.is_shed


def test_every_supplier_and_the_keeper_are_marked_invented(scenario):
    sheet = sheet_of(scenario, day=DAY, order_day=ORDER_DAY, seed=1)
    assert "invented" in sheet.keeper.name
    assert all("invented" in supplier.name for supplier in sheet.suppliers)


def test_early_prices_end_after_the_day_of_the_order(scenario):
    sheet = sheet_of(scenario, day=DAY, order_day=ORDER_DAY, seed=1)
    early = [offer.open_until for offer in sheet.offers if offer.open_until]
    assert early and min(early) > ORDER_DAY
