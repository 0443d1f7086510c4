"""Entries that hold gear back, each with its reason, and the rows that tell it."""

import pytest

from inventory.deadouts.holding import Held, as_steps, hold_steps
from inventory.deadouts.holds import lots_at
from inventory.deadouts.reach import Reach, Reached
from inventory.gear import Condition, Reason
from inventory.ledger.posting import turned
from inventory.locations import store_of
from inventory.models import Hold
from tests import makers
from tests.inventory.deadouts.conftest import hive_of, work

pytestmark = pytest.mark.django_db


def held(steps):
    return [
        (step.entry.part.code, step.entry.quantity, step.held.reason)
        for step in steps
        if step.held is not None
    ]


def of(ground, **more):
    return Reached(location=store_of(ground), head="here", why="because", **more)


def test_only_what_ends_as_held_gear_carries_a_reason(shed):
    here, box = store_of(shed), makers.part("box-deep-10")
    change = {"was": Condition.SOUND, "becomes": Condition.HELD, "reason": Reason.HELD}
    entries = turned(part=box, quantity=2, source=here, target=here, **change)
    steps = as_steps(entries, Held(reason="reached", why="because"))
    assert [step.held is None for step in steps] == [True, False]


def test_a_place_is_held_whole_feed_and_consumables_left_out(shed):
    makers.put(shed, {"box-deep-10": 3, "sugar": 50})
    makers.put(shed, {"box-deep-10": 1}, condition="to mend")
    assert held(hold_steps(Reach(held=(of(shed),), gone=()))) == [
        ("box-deep-10", 3, "reached"),
        ("box-deep-10", 1, "reached"),
    ]


def test_no_more_than_may_have_been_on_the_hive_is_held(shed):
    makers.put(shed, {"box-deep-10": 3})
    most = {makers.part("box-deep-10").pk: 2}
    assert held(hold_steps(Reach(held=(of(shed, most=most, reason="foulbrood"),), gone=()))) == [
        ("box-deep-10", 2, "foulbrood")
    ]


def test_pieces_of_the_hive_keep_the_graver_reason_where_the_place_is_held_whole(shed):
    makers.put(shed, {"box-deep-10": 3})
    traced = of(shed, most={makers.part("box-deep-10").pk: 2}, reason="foulbrood")
    assert held(hold_steps(Reach(held=(traced, of(shed)), gone=()))) == [
        ("box-deep-10", 2, "foulbrood"),
        ("box-deep-10", 1, "reached"),
    ]


def test_the_rows_stand_by_the_movements_that_brought_the_pieces(hive, shed):
    row = work(hive, shed, suspected=True)
    for hold in Hold.objects.filter(deadout=row).select_related("movement"):
        assert hold.movement.condition == "held back" and hold.movement.target.is_inside


def test_every_held_piece_has_its_reason(yard, shed):
    for tag in ("F-01", "F-02", "F-03"):
        work(hive_of(tag, yard), shed, brood_seen=False)
    lots = lots_at(shed, makers.part("comb-deep-brood"))
    assert [(lot.quantity, lot.deadout.colony.tag) for lot in lots] == [
        (16, "F-01"),
        (16, "F-02"),
        (16, "F-03"),
    ]
