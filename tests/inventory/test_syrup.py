"""Gallons of syrup and the sugar in them, beside the published density of sucrose solutions."""

from decimal import Decimal

import pytest

from inventory.syrup import LB_A_GALLON, RATIONS


@pytest.mark.parametrize(
    ("code", "weight", "sugar"),
    # densities: CRC Handbook table of sucrose solutions at 20 °C (50 %: 1.2296), NBS Circular 440 (66.7 %: 1.3265,
    # from memory); a gallon of 1 g/mL weighs 8.3454 lb
    [("syrup-1-1", "10.26", "5.13"), ("syrup-2-1", "11.07", "7.38")],
)
def test_a_gallon_weighs_and_holds_what_the_tables_say(code, weight, sugar):
    ration = RATIONS[code]
    assert round(ration.density * LB_A_GALLON, 2) == Decimal(weight)
    assert round(ration.lb_each, 2) == Decimal(sugar)


def test_sugar_of_many_gallons_is_rounded_once_to_whole_pounds():
    assert RATIONS["syrup-2-1"].lb(4) == 7
    assert RATIONS["syrup-2-1"].lb(40) == 74  # 73.8
    assert RATIONS["syrup-1-1"].lb(2) == 3  # half a gallon, 2.565


def test_sugar_and_patties_are_told_in_pounds_and_weigh_themselves():
    assert [RATIONS[code].lb(12) for code in ("sugar", "patty")] == [12, 12]


def test_amounts_are_said_in_the_unit_they_are_told_in():
    assert (RATIONS["syrup-1-1"].amount(10), RATIONS["syrup-1-1"].amount(40)) == ("2.5 gal", "10 gal")
    assert RATIONS["sugar"].amount(100) == "100 lb"


def test_a_heavier_syrup_holds_more_sugar():
    assert RATIONS["syrup-2-1"].lb_each > RATIONS["syrup-1-1"].lb_each
