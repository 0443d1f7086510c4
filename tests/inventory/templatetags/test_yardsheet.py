"""What the books add to a yard's sheet: its store, its acts, the orders that wait."""

import datetime as dt

import pytest
from django.urls import reverse

from apiary.rights import HELPER, READER
from inventory.templatetags.yardsheet import (
    acts_at,
    colony_acts,
    deadouts,
    gear_acts,
    hives_waiting,
    orders_waiting,
    yard_store,
)
from tests.makers import DAY, make_colony, make_dead_colony, make_order, make_person, make_yard, put

pytestmark = pytest.mark.django_db


@pytest.fixture
def page():
    """The context of a page the keeper looks at."""
    return {"user": make_person()}


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


def test_acts_lead_to_pages_that_exist_with_the_yard_filled_in(page):
    yard = make_yard("fern-hollow")
    acts = acts_at(yard, page["user"])
    assert acts and all(act["address"].endswith("?yard=fern-hollow") for act in acts)


def test_acts_are_offered_only_where_they_are_open():
    mine, far = make_yard("fern-hollow"), make_yard("long-acre")
    helper = make_person("sam", role=HELPER, yards=[mine])
    reader = make_person("kim", role=READER, yards=[mine])
    assert acts_at(mine, helper) and not acts_at(far, helper) and not acts_at(mine, reader)
    colony = make_colony(yard=mine)
    assert colony_acts({"user": helper}, colony)["acts"]
    assert not colony_acts({"user": helper}, colony)["shows_books"]
    assert colony_acts({"user": reader}, colony)["acts"] == []
    assert gear_acts({"user": helper})["acts"] and gear_acts({"user": reader})["acts"] == []


def test_an_order_waits_until_all_of_it_came(page):
    order = make_order()
    (row,) = orders_waiting(page, DAY)
    assert (row["order"], row["owed"]) == (order, 10)


def test_an_order_past_its_day_is_late(page):
    order = make_order()
    before, after = order.due_on, order.due_on + dt.timedelta(days=1)
    assert [row["late"] for row in orders_waiting(page, before)] == [False]
    assert [row["late"] for row in orders_waiting(page, after)] == [True]


def test_hives_of_ended_colonies_wait_by_yard_until_their_gear_is_told(page):
    yard, ended = make_yard("fern-hollow"), dt.date(2025, 6, 1)
    make_dead_colony(tag="F-2", yard=yard, gear=True, ended=ended)
    make_dead_colony(tag="F-1", yard=yard, gear=True, ended=ended, why="united")
    make_dead_colony(tag="F-3", yard=yard, ended=ended)
    assert hives_waiting(page, dt.date(2025, 5, 31)) == []
    united, died = hives_waiting(page, ended)
    assert [(row["yard"], row["tags"]) for row in (united, died)] == [(yard, ["F-1"]), (yard, ["F-2"])]
    assert died["pieces"] > 2
    assert died["address"] == f"{reverse('act-deadout')}?yard=fern-hollow"
    assert united["address"] == f"{reverse('act-salvage')}?yard=fern-hollow"
    assert [colony.tag for colony in deadouts(yard)["colonies"]] == ["F-2"]  # the united one did not die


def test_what_waits_elsewhere_is_not_told_to_a_helper_nor_orders_to_a_reader():
    mine, far = make_yard("fern-hollow"), make_yard("long-acre")
    ended = dt.date(2025, 6, 1)
    for yard in (mine, far):
        make_dead_colony(yard=yard, gear=True, ended=ended)
    make_order()
    helper = {"user": make_person("sam", role=HELPER, yards=[mine])}
    reader = {"user": make_person("kim", role=READER, yards=[mine])}
    assert [row["yard"] for row in hives_waiting(helper, ended)] == [mine]
    assert len(orders_waiting(helper, DAY)) == 1
    (row,) = hives_waiting(reader, ended)
    assert "address" not in row
    assert orders_waiting(reader, DAY) == []
