"""Which frames of a hive go along on a split, and in what state they are booked."""

import pytest

from inventory.locations import place_of
from inventory.yardwork.combs import along, combs_of, dealt
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY


def chosen(gear, number, depth="deep"):
    colony = makers.make_colony()
    makers.put(colony, gear)
    return combs_of(place_of(colony), depth, number, DAY)


def codes(combs):
    return [(was.code, becomes.code, number) for was, becomes, number in combs]


def test_brood_comb_first_then_honey_comb_then_what_was_foundation():
    gear = {
        "comb-deep-honey": 1,
        "comb-deep-brood": 1,
        "comb-deep-brood-treated": 1,
        "frame-deep-foundation": 9,
    }
    assert codes(chosen(gear, 5)) == [
        ("comb-deep-brood", "comb-deep-brood", 1),
        ("comb-deep-brood-treated", "comb-deep-brood-treated", 1),
        ("comb-deep-honey", "comb-deep-honey", 1),
        ("frame-deep-foundation", "comb-deep-brood", 2),
    ]


def test_bare_frames_and_other_depths_carry_no_brood():
    gear = {"frame-deep": 5, "comb-medium-brood": 5}
    assert codes(chosen(gear, 2)) == [("comb-deep-brood", "comb-deep-brood", 2)]


def test_frames_are_dealt_out_in_order():
    combs = chosen({"comb-deep-brood": 3, "comb-deep-honey": 3}, 6)
    first, others = dealt(combs, 4)
    assert [number for *_, number in first] == [3, 1]
    assert [number for *_, number in others] == [2]
    assert dealt(others, 0) == ([], others)


def test_foundation_is_drawn_before_it_goes_along():
    mother, daughter = place_of(makers.make_colony("M")), place_of(makers.make_colony("D"))
    entries = list(along(chosen({"frame-deep-foundation": 2}, 2), mother, daughter))
    ends = [(str(entry.source), str(entry.target), str(entry.reason)) for entry in entries]
    assert ends == [
        ("M", "workbench", "drawn by bees"),
        ("workbench", "M", "drawn by bees"),
        ("M", "D", "placed on a colony"),
    ]
