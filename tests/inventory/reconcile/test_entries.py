"""Mistakes of entry that explain a difference: twice, at the bench, by bees, a condition, a receipt."""

import pytest

from inventory.reconcile import Likely, Making, Owed, explain
from inventory.reconcile.entries import TWICE_DAYS
from tests.inventory.reconcile.made import HIVE, OTHER, SHED, YARD, difference, facts, moved

ASSEMBLE = Making(
    recipe="assemble-box-medium-10",
    takes=(("box-medium-10-flat", 1), ("glue", 1)),
    makes=(("box-medium-10", 1),),
)


def of(likely, rows, **known):
    return [one for one in explain(rows, facts(**known)) if one.likely == likely]


def test_the_same_load_twice_within_days_is_a_double_entry():
    loads = (moved("stand", 6, YARD, SHED, act=1, days=-8), moved("stand", 6, YARD, SHED, act=2, days=-7))
    (one,) = explain([difference("stand", 20, 14)], facts(moved=loads))
    assert (one.likely, one.act, one.whole) == (Likely.TWICE, 2, True)
    assert one.pieces == (("stand", "sound", 6),)


def test_a_double_entry_shows_as_more_at_its_source_too():
    loads = (moved("stand", 6, SHED, YARD, act=1, days=-8), moved("stand", 6, SHED, YARD, act=2, days=-8))
    (one,) = of(Likely.TWICE, [difference("stand", 4, 10)], moved=loads)
    assert one.act == 2


def test_loads_further_apart_of_other_numbers_or_of_one_act_are_no_double_entry():
    apart = (
        moved("stand", 6, YARD, SHED, act=1, days=-9),
        moved("stand", 6, YARD, SHED, act=2, days=TWICE_DAYS - 8),
    )
    other = (moved("stand", 6, YARD, SHED, act=1), moved("stand", 5, YARD, SHED, act=2))
    one_act = (moved("stand", 6, YARD, SHED, act=1), moved("stand", 6, YARD, SHED, act=1))
    for loads in (apart, other, one_act):
        assert of(Likely.TWICE, [difference("stand", 20, 14)], moved=loads) == []


def test_a_double_entry_with_other_gear_in_the_act_is_not_reversed_whole():
    loads = (
        moved("stand", 6, YARD, SHED, act=1),
        moved("stand", 6, YARD, SHED, act=2),
        moved("sugar", 50, YARD, SHED, act=2),
    )
    (one,) = of(Likely.TWICE, [difference("stand", 20, 14)], moved=loads)
    assert not one.whole


def test_pieces_missing_and_boxes_more_were_assembled_and_not_booked():
    rows = [difference("box-medium-10-flat", 20, 8), difference("box-medium-10", 0, 12)]
    (one,) = of(Likely.ASSEMBLED, rows, makings=(ASSEMBLE,))
    assert (one.recipe, one.times) == ("assemble-box-medium-10", 12)
    assert one.pieces == (("box-medium-10-flat", "sound", 12), ("box-medium-10", "sound", 12))


def test_pieces_more_and_boxes_missing_were_booked_as_assembled_and_are_not():
    rows = [difference("box-medium-10-flat", 8, 20), difference("box-medium-10", 12, 0)]
    bench = (moved("box-medium-10", 12, 99, SHED, act=5, reason="assembled"),)
    (one,) = of(Likely.NOT_ASSEMBLED, rows, makings=(ASSEMBLE,), moved=bench)
    assert (one.act, one.times) == (5, 12)
    (one,) = of(Likely.NOT_ASSEMBLED, rows, makings=(ASSEMBLE,))
    assert one.act is None


def test_numbers_that_do_not_match_the_recipe_are_no_assembling():
    rows = [difference("box-medium-10-flat", 20, 8), difference("box-medium-10", 0, 11)]
    assert of(Likely.ASSEMBLED, rows, makings=(ASSEMBLE,)) == []
    only_made = [difference("box-medium-10", 0, 12)]
    assert of(Likely.ASSEMBLED, only_made, makings=(ASSEMBLE,)) == []
    on_hive = [
        difference("box-medium-10-flat", 20, 8, place=HIVE),
        difference("box-medium-10", 0, 12, place=HIVE),
    ]
    assert of(Likely.ASSEMBLED, on_hive, makings=(ASSEMBLE,)) == []


def test_foundation_missing_and_comb_more_was_drawn():
    rows = [
        difference("frame-medium-foundation", 40, 20),
        difference("comb-medium-honey", 10, 28),
    ]
    (one,) = of(Likely.DRAWN, rows)
    assert one.pieces == (
        ("frame-medium-foundation", "sound", 18),
        ("comb-medium-honey", "sound", 18),
    )


def test_missing_as_sound_and_more_as_to_mend_is_a_condition_not_booked():
    rows = [difference("stand", 20, 17), difference("stand", 0, 2, condition="to mend")]
    (one,) = of(Likely.MARKED, rows)
    assert one.pieces == (("stand", "sound", 2), ("stand", "to mend", 2))


@pytest.mark.parametrize(("owed", "told"), [(12, [12]), (20, [12]), (7, [7]), (6, []), (0, [])])
def test_more_while_as_many_are_owed_came_on_the_order(owed, told):
    found = of(
        Likely.RECEIPT,
        [difference("stand", 0, 12)],
        owed=(Owed(order=4, part="stand", quantity=owed),),
    )
    assert [one.pieces[0][2] for one in found] == told
    assert {one.order for one in found} <= {4}


def test_what_is_held_back_or_on_a_hive_came_on_no_order():
    owed = (Owed(order=4, part="stand", quantity=12),)
    held = difference("stand", 0, 12, condition="held back")
    assert of(Likely.RECEIPT, [held, difference("stand", 0, 12, place=HIVE)], owed=owed) == []


def test_other_places_lend_no_recipe():
    rows = [
        difference("box-medium-10-flat", 20, 8, place=OTHER),
        difference("box-medium-10", 0, 12, place=YARD),
    ]
    assert of(Likely.ASSEMBLED, rows, makings=(ASSEMBLE,)) == []
