"""Gear between a store and its hives: supers not booked, deadouts whose gear was carried off.

A super has 8 to 10 frames in a ten-frame box: spaced extracting combs, 8 as USDA, The Home Apiary, part 3, has them.
"""

import pytest

from inventory.reconcile import Likely, explain
from tests.inventory.reconcile.made import FERN, MILL, SHED, YARD, difference, facts, hive


def of(likely, rows, **known):
    return [one for one in explain(rows, facts(**known)) if one.likely == likely]


def store_lacks(boxes, combs, *, part="box-medium-10", place=YARD):
    return [
        difference(part, 10, 10 - boxes, place=place),
        difference("comb-medium-honey", 100, 100 - combs, place=place),
    ]


@pytest.mark.parametrize(("combs", "likely"), [(24, True), (30, True), (23, False), (31, False), (0, False)])
def test_boxes_and_combs_missing_in_super_proportions_stand_on_hives_in_flow(combs, likely):
    hives = (hive("F-02", colony=22), hive("F-01", colony=21))
    found = of(Likely.SUPER_UP, store_lacks(3, combs), hives=hives)
    assert [one.colonies for one in found] == ([(21, 22)] if likely else [])


def test_hives_with_a_super_out_of_flow_dead_or_of_another_width_are_no_candidates():
    hives = (
        hive(colony=1, supers=1),
        hive(colony=2, in_flow=False),
        hive(colony=3, ended=True),
        hive(colony=4, width=8),
    )
    assert of(Likely.SUPER_UP, store_lacks(3, 30), hives=hives) == []
    assert of(Likely.SUPER_UP, store_lacks(3, 24, part="box-medium-8"), hives=hives)[0].colonies == (4,)


def test_foundation_and_comb_together_fill_the_boxes():
    rows = [*store_lacks(3, 12), difference("frame-medium-foundation", 40, 24, place=YARD)]
    (one,) = of(Likely.SUPER_UP, rows, hives=(hive(),))
    assert [piece[2] for piece in one.pieces] == [3, 12, 16]


def test_more_in_super_proportions_was_pulled_from_hives_that_have_one_booked():
    hives = (hive(colony=1, supers=2), hive("F-02", colony=2))
    (one,) = of(Likely.PULLED, store_lacks(-3, -27), hives=hives)
    assert one.colonies == (1,)


def test_the_shed_has_no_hives_so_those_of_all_yards_come_to_mind():
    (one,) = of(Likely.SUPER_UP, store_lacks(3, 30, place=SHED), hives=(hive(yard=MILL),))
    assert one.place == SHED


def test_more_here_while_a_deadout_still_has_it_booked_came_off_the_dead_hive():
    dead = hive(
        ended=True, gear=(("box-medium-10", "sound", 2), ("comb-medium-honey", "sound", 20)), yard=FERN
    )
    (one,) = of(
        Likely.DEADOUT,
        [
            difference("box-medium-10", 0, 2, place=YARD),
            difference("comb-medium-honey", 0, 25, place=YARD),
        ],
        hives=(dead,),
    )
    assert one.colonies == (21,)
    assert one.pieces == (("box-medium-10", "sound", 2), ("comb-medium-honey", "sound", 20))


def test_a_living_hive_or_a_missing_piece_is_no_deadout():
    gear = (("box-medium-10", "sound", 2),)
    assert of(Likely.DEADOUT, [difference("box-medium-10", 0, 2)], hives=(hive(gear=gear),)) == []
    dead = hive(gear=gear, ended=True)
    assert of(Likely.DEADOUT, [difference("box-medium-10", 2, 0)], hives=(dead,)) == []
