"""What the keeper tells for value."""

from decimal import Decimal

import pytest

from inventory.models import ToldPrice, ToldRest, ValueBasis
from inventory.told_prices import tell_basis, tell_price, tell_rest
from tests import makers

pytestmark = pytest.mark.django_db


def test_a_price_is_kept_changed_and_taken_back():
    stand = makers.part("stand")
    tell_price(stand, Decimal("9.50"))
    tell_price(stand, Decimal("8.00"))
    assert ToldPrice.objects.get().cents == 800
    tell_price(stand, None)
    assert not ToldPrice.objects.exists()


def test_part_of_a_cent_is_a_bug():
    with pytest.raises(ValueError, match="cents"):
        tell_price(makers.part("stand"), Decimal("0.005"))


def test_there_is_one_basis():
    tell_basis(work=Decimal("20"), convention="monthly")
    tell_basis(work=None, convention="full year")
    assert [(row.work_cents_per_hour, row.convention) for row in ValueBasis.objects.all()] == [
        (0, "full year")
    ]


def test_rest_values_are_kept_by_part_and_as_a_share_of_cost():
    tell_rest(makers.part("stand"), Decimal("2.50"))
    tell_basis(work=None, convention="monthly", rest_percent=15)
    assert (ToldRest.objects.get().cents, ValueBasis.objects.get().rest_percent) == (250, 15)
    assert str(ToldRest.objects.get()) == "hive stand: 2.5"
    tell_rest(makers.part("stand"), None)
    tell_basis(work=None, convention="monthly")
    assert not ToldRest.objects.exists() and ValueBasis.objects.get().rest_percent == 0
