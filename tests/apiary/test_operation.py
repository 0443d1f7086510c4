"""Whose bees these are: told the first time, told again, and nothing else of the row touched."""

import pytest

from apiary.models import Keeper
from apiary.operation import operation, tell_operation
from tests.makers import make_keeper

pytestmark = pytest.mark.django_db


def test_before_anything_is_told_there_is_a_row_without_a_name_that_is_not_kept():
    assert operation().name == "" and not Keeper.objects.exists()


def test_the_first_telling_makes_the_row_and_the_next_changes_it():
    tell_operation(name="Invented Apiary", address="1 Example Lane", phone="", email="")
    tell_operation(
        name="Invented Apiary", address="2 Example Lane", phone="555 0100", email="bees@example.org"
    )
    row = Keeper.objects.get()
    assert (row.address, row.phone, row.email) == ("2 Example Lane", "555 0100", "bees@example.org")


def test_what_is_not_told_stays():
    make_keeper(truck_lb=700, money="CAD")
    tell_operation(name="Another name")
    row = Keeper.objects.get()
    assert (row.name, row.truck_lb, row.money, row.region) == ("Another name", 700, "CAD", "middle")
