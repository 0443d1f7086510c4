"""Keeper, yards, flows and gear of a sheet: put where it says, corrected to the count told."""

import dataclasses
from decimal import Decimal

import pytest

from apiary.models import FlowWindow, Keeper, Yard
from inventory.gear import Condition, Gear
from inventory.models import Act, Movement
from inventory.sheets import FlowRow, GearRow
from inventory.sheets.examples import example
from inventory.stock import on_hand
from tests.inventory.loading.made import LATER, changed, load, told

pytestmark = pytest.mark.django_db


def test_every_yard_has_a_store_also_one_without_gear():
    load(changed(gear=()))
    assert all(yard.store for yard in Yard.objects.all())


def test_gear_lies_where_the_sheet_says_in_its_condition():
    load()
    assert on_hand(Yard.objects.get(code="shed")) == {
        Gear(part="box-medium-10"): 42,
        Gear(part="box-medium-10", condition=Condition.TO_MEND): 5,
    }


def test_a_store_with_books_is_corrected_to_the_count_told_and_says_so():
    load()
    gear = (
        GearRow(yard="shed", part="box-medium-10", quantity=40),
        GearRow(yard="shed", part="feeder-10", quantity=6),
        GearRow(yard="mill-field", part="frame-medium-foundation", quantity=40),
    )
    loaded = load(changed(gear=gear), digest="b", day=LATER)
    assert told(loaded, "gear") == [
        ("Shed: medium box, 10 frames", "changed", "the book has 42, corrected to the 40 told"),
        ("Shed: top feeder, 10 frames", "changed", "the book has 0, corrected to the 6 told"),
        ("Mill Field (invented): medium frame with foundation", "as it is", ""),
    ]
    assert on_hand(Yard.objects.get(code="shed")) == {
        Gear(part="box-medium-10"): 40,
        Gear(part="box-medium-10", condition=Condition.TO_MEND): 5,
        Gear(part="feeder-10"): 6,
    }
    assert Act.objects.filter(name="correct").count() == 1


def test_a_count_of_nothing_empties_a_store_with_books_and_opens_nothing_in_one_without():
    none = (GearRow(yard="shed", part="feeder-10", quantity=0),)
    load(changed(gear=none, colonies=()))
    assert not Movement.objects.exists()
    load(digest="b")
    gear = (GearRow(yard="shed", part="box-medium-10", quantity=0),)
    load(changed(gear=gear), digest="c")
    assert Gear(part="box-medium-10") not in on_hand(Yard.objects.get(code="shed"))


def test_the_flows_of_a_yard_become_those_of_the_sheet():
    load()
    flows = (FlowRow(yard="mill-field", name="Clover", first_week=23, last_week=29, gain_lb=Decimal(60)),)
    loaded = load(changed(flows=flows), digest="b")
    assert [change[1:] for change in told(loaded, "flows")] == [
        ("changed", "first week"),
        ("changed", "taken out: the sheet has it no more"),
    ]
    load(changed(flows=()), digest="c")
    assert FlowWindow.objects.get().first_week == 23


def test_a_silent_sheet_leaves_keeper_and_shed_as_they_are():
    load()
    shed = dataclasses.replace(example().yards[0], is_shed=False)
    load(changed(keeper=None, yards=(shed,)), digest="b")
    assert Keeper.objects.exists() and Yard.objects.get(is_shed=True).code == "shed"
