"""The records of reconciling carry their figures and refuse nothing."""

import pytest

from inventory.reconcile import differing
from inventory.reconcile.records import fits
from tests.inventory.reconcile.made import FERN, HIVE, SHED, YARD, difference, facts, hive


def test_more_is_above_zero_and_missing_below():
    assert difference("stand", 4, 9).gap == 5
    assert difference("stand", 9, 4).gap == -5


def test_what_agrees_does_not_differ():
    rows = [difference("stand", 4, 4), difference("sugar", 0, 1)]
    assert differing(rows) == (rows[1],)


@pytest.mark.parametrize(
    ("quantity", "gap", "fit"), [(6, -6, True), (4, 7, True), (3, 6, False), (7, 6, False), (0, 6, False)]
)
def test_an_explanation_fits_more_than_half_and_not_more_than_all(quantity, gap, fit):
    assert fits(quantity, gap) is fit


def test_a_place_that_is_no_store_is_a_colony():
    assert facts().is_store(SHED) and not facts().is_store(HIVE)


def test_near_a_store_are_its_own_hives_else_all():
    one, other = hive(yard=FERN), hive("M-01", yard=900)
    assert facts(hives=(one, other)).near(YARD) == [one]
    assert facts(hives=(one, other)).near(SHED) == [one, other]
