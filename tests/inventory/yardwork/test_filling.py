"""What goes into boxes: comb before foundation, none taken twice, and as many as the hand holds."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inventory.yardwork.filling import Fill, Frames, filled


def fill(boxes, drawn=0, foundation=0, *, combs=10, frames=10, how=Fill.STORE):
    given = filled(boxes, drawn=drawn, foundation=foundation, combs=combs, frames=frames, fill=how)
    return [(one.drawn, one.foundation) for one in given]


def test_drawn_comb_goes_first_then_foundation():
    assert fill([1, 1, 1], drawn=20, foundation=40) == [(10, 0), (10, 0), (0, 10)]


def test_spaced_combs_reach_further():
    # eight extracting combs in a super for ten: USDA, The Home Apiary, part 3
    assert fill([1, 1, 1], drawn=24, foundation=40, combs=8) == [(8, 0)] * 3


def test_the_rest_of_the_comb_shares_a_box_before_the_store_is_overdrawn():
    assert fill([1, 1], drawn=14, foundation=6) == [(10, 0), (4, 6)]


def test_a_box_is_of_one_kind_where_that_can_be():
    assert fill([1], drawn=4, foundation=10) == [(0, 10)]


def test_boxes_beyond_the_store_are_of_foundation():
    assert fill([2], drawn=10, foundation=5) == [(10, 10)]
    assert fill([1]) == [(0, 10)]


def test_a_store_that_knows_comb_alone_has_more_comb_in_the_hand():
    assert fill([1, 1], drawn=10) == [(10, 0), (10, 0)]


@pytest.mark.parametrize(("how", "frames"), [(Fill.DRAWN, (16, 0)), (Fill.FOUNDATION, (0, 20))])
def test_the_keeper_says_what_goes_in(how, frames):
    assert fill([2], drawn=3, foundation=3, combs=8, how=how) == [frames]


def test_a_hive_without_a_box_gets_no_frames():
    assert filled([0], drawn=9, foundation=9, combs=9, frames=9) == [Frames()]


@given(
    boxes=st.lists(st.integers(0, 4), max_size=6),
    drawn=st.integers(0, 80),
    foundation=st.integers(0, 80),
    combs=st.integers(8, 10),
)
def test_every_box_is_full_and_the_store_is_overdrawn_only_when_it_must_be(boxes, drawn, foundation, combs):
    given = fill(boxes, drawn, foundation, combs=combs)
    for number, (of_comb, of_foundation) in zip(boxes, given, strict=True):
        assert combs * number <= of_comb + of_foundation <= 10 * number
    if drawn + foundation >= 10 * sum(boxes):
        assert sum(one[0] for one in given) <= drawn
        assert sum(one[1] for one in given) <= foundation
