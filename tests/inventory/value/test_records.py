"""Records of value."""

import datetime as dt
from dataclasses import FrozenInstanceError
from decimal import Decimal

import pytest

from inventory.value.records import Came, money


def test_a_record_is_never_changed():
    came = Came(day=dt.date(2025, 1, 1), part="box", pieces=1, cents=5, why="received")
    with pytest.raises(FrozenInstanceError):
        came.cents = 6


def test_money_is_a_decimal_of_cents():
    assert money(1234) == Decimal("12.34")
