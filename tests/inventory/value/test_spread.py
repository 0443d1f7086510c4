"""Cents shared out to the cent."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inventory.value.spread import part_of_whole, spread


def test_what_is_left_over_goes_to_the_largest_remainders():
    assert spread(100, [1, 1, 1]) == [34, 33, 33]
    assert spread(10, [1, 5, 3]) == [1, 6, 3]  # 1.11, 5.56, 3.33


def test_without_weights_all_bear_alike_and_nothing_is_nothing():
    assert spread(5, [0, 0]) == [3, 2]
    assert spread(0, []) == []


def test_nothing_below_zero_and_nobody_to_bear_is_a_bug():
    with pytest.raises(ValueError, match="below zero"):
        spread(-1, [1])
    with pytest.raises(ValueError, match="nobody"):
        spread(1, [])


@given(st.integers(0, 10**9), st.lists(st.integers(0, 10**6), min_size=1, max_size=20))
def test_shares_add_up_and_are_within_a_cent(total, weights):
    shares = spread(total, weights)
    assert sum(shares) == total
    if any(weights):
        assert all(
            abs(s * sum(weights) - total * w) < sum(weights) for s, w in zip(shares, weights, strict=True)
        )


def test_a_half_cent_goes_up():
    assert [part_of_whole(5, 1, 2), part_of_whole(100, 1, 3), part_of_whole(100, 2, 3)] == [3, 33, 67]
