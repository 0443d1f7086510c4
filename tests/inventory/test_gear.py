"""The words of gear: closed lists, and records that refuse to be mistaken for a yes or no."""

import pytest

from inventory.gear import Comb, Condition, Depth, Gear, Kind, Reason, Tally

BOX = Gear(part="box-deep-10")


def test_gear_is_sound_unless_said_otherwise_and_equal_by_its_words():
    assert BOX.condition == Condition.SOUND
    assert Gear(part="box-deep-10", condition=Condition("sound")) == BOX
    assert len({BOX, Gear(part="box-deep-10"), Gear(part="box-deep-10", condition=Condition.HELD)}) == 2


@pytest.mark.parametrize("quantity", [-1, 1.5, "2", None])
def test_a_tally_is_a_whole_number_of_pieces(quantity):
    with pytest.raises(ValueError, match="whole number"):
        Tally(gear=BOX, quantity=quantity)


def test_a_tally_is_no_yes_or_no_not_even_of_nothing():
    with pytest.raises(TypeError, match="compare its quantity"):
        bool(Tally(gear=BOX, quantity=0))


def test_words_fit_the_columns_they_are_kept_in():
    """Lengths of the columns: kind 12, depth 8, comb 10, condition 10, reason 24."""
    lists = ((Kind, 12), (Depth, 8), (Comb, 10), (Condition, 10), (Reason, 24))
    assert [(word, length) for words, length in lists for word in words if len(word) > length] == []
