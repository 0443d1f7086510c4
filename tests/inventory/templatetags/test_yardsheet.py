"""What the books add to a yard's sheet: its store, its acts, the orders that wait."""

import datetime as dt

import pytest

from inventory.templatetags.yardsheet import acts_at, deadouts, hives_waiting, orders_waiting, yard_store
from tests.makers import DAY, make_dead_colony, make_order, make_yard, put

pytestmark = pytest.mark.django_db


def test_the_store_lists_part_by_condition_and_sums_pieces():
    yard = make_yard()
    put(yard, {"box-medium-10": 14, "sugar": 100})
    put(yard, {"box-medium-10": 2}, condition="held back")
    store = yard_store(yard)
    rows = {(row.part.code, row.condition): row.quantity for row in store["holdings"]}
    assert rows == {
        ("box-medium-10", "sound"): 14,
        ("box-medium-10", "held back"): 2,
        ("sugar", "sound"): 100,
    }
    assert store["pieces"] == 16  # pounds of sugar are no pieces


def test_an_empty_store_has_no_rows():
    assert yard_store(make_yard())["holdings"] == []


def test_acts_lead_to_pages_that_exist_with_the_yard_filled_in():
    yard = make_yard("fern-hollow")
    assert all(act["address"].endswith("?yard=fern-hollow") for act in acts_at(yard))


def test_an_order_waits_until_all_of_it_came():
    order = make_order()
    (row,) = orders_waiting(DAY)
    assert (row["order"], row["owed"]) == (order, 10)


def test_an_order_past_its_day_is_late():
    order = make_order()
    before, after = order.due_on, order.due_on + dt.timedelta(days=1)
    assert [row["late"] for row in orders_waiting(before)] == [False]
    assert [row["late"] for row in orders_waiting(after)] == [True]


def test_hives_of_ended_colonies_wait_by_yard_until_their_gear_is_told():
    yard, ended = make_yard("fern-hollow"), dt.date(2025, 6, 1)
    make_dead_colony(tag="F-2", yard=yard, gear=True, ended=ended)
    make_dead_colony(tag="F-1", yard=yard, gear=True, ended=ended, why="united")
    make_dead_colony(tag="F-3", yard=yard, ended=ended)
    assert hives_waiting(dt.date(2025, 5, 31)) == []
    (row,) = hives_waiting(ended)
    assert (row["yard"], row["tags"]) == (yard, ["F-1", "F-2"])
    assert row["pieces"] > 2
    assert row["address"].endswith("?yard=fern-hollow")
    assert [colony.tag for colony in deadouts(yard)["colonies"]] == ["F-2"]  # the united one did not die
