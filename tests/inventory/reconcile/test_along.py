"""A box that is missing on a hive takes its frames along."""

from inventory.reconcile import frames_along
from tests.inventory.reconcile.made import HIVE, PIECES, difference

GEAR = {
    (HIVE, "box-medium-10", "sound"): 3,
    (HIVE, "comb-medium-honey", "sound"): 18,
    (HIVE, "frame-medium-foundation", "sound"): 12,
    (HIVE, "stand", "sound"): 1,
}


def along(*rows, gear=GEAR):
    return {row.part: -row.gap for row in frames_along(rows, gear, PIECES)}


def test_one_box_of_three_takes_a_third_of_the_frames():
    assert along(difference("box-medium-10", 3, 2, place=HIVE)) == {
        "comb-medium-honey": 6,
        "frame-medium-foundation": 4,
    }


def test_all_boxes_take_all_frames():
    assert along(difference("box-medium-10", 3, 0, place=HIVE)) == {
        "comb-medium-honey": 18,
        "frame-medium-foundation": 12,
    }


def test_boxes_that_agree_or_are_more_take_nothing():
    assert along(difference("box-medium-10", 3, 3, place=HIVE)) == {}
    assert along(difference("box-medium-10", 3, 4, place=HIVE)) == {}


def test_frames_that_were_counted_are_left_to_their_count():
    rows = (
        difference("box-medium-10", 3, 2, place=HIVE),
        difference("comb-medium-honey", 18, 18, place=HIVE),
    )
    assert along(*rows) == {"frame-medium-foundation": 4}


def test_another_hive_keeps_its_frames():
    assert along(difference("box-medium-10", 3, 2, place=HIVE + 1)) == {}
