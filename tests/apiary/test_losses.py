"""Losses as shares of the colonies at risk, and the counts that are refused. Published figures: tests/outside."""

from fractions import Fraction

import pytest

from apiary.losses import ColonyBalance, average_loss, loss_share, total_loss


def test_splits_and_sales_change_what_was_at_risk():
    balance = ColonyBalance(start=100, increase=40, removed=15, end=100)
    assert (balance.at_risk, balance.dead, balance.loss) == (125, 25, Fraction(1, 5))


def test_nothing_lost_is_a_loss_of_zero():
    assert loss_share(start=12, increase=3, end=15) == 0


def test_all_lost_is_a_loss_of_one():
    assert loss_share(start=12, increase=0, end=0) == 1


def test_the_total_weighs_colonies_and_the_average_weighs_operations():
    large = ColonyBalance(start=900, end=720)
    small = ColonyBalance(start=10, end=5)
    assert total_loss([large, small]) == Fraction(185, 910)
    assert average_loss([large, small]) == Fraction(7, 20)


def test_an_operation_without_colonies_does_not_weigh_on_the_average():
    assert average_loss([ColonyBalance(start=0, end=0), ColonyBalance(start=4, end=3)]) == Fraction(1, 4)


def test_more_colonies_than_there_could_be_are_refused_with_the_sum():
    with pytest.raises(ValueError, match=r"12 colonies at the end, but only 8 \+ 3 − 0 = 11 were there"):
        loss_share(start=8, increase=3, end=12)


@pytest.mark.parametrize(
    ("counts", "what"),
    [
        ({"start": -1, "increase": 0, "end": 0}, "at the start"),
        ({"start": 1, "increase": 0.5, "end": 0}, "added"),
        ({"start": 1, "increase": 0, "removed": -2, "end": 0}, "removed"),
        ({"start": 1, "increase": 0, "end": "1"}, "at the end"),
    ],
)
def test_a_count_that_is_no_whole_number_is_refused_by_name(counts, what):
    with pytest.raises(ValueError, match=f"Colonies {what}: give a whole number"):
        loss_share(**counts)


def test_no_colony_at_risk_has_no_loss():
    for ask in (total_loss, average_loss):
        with pytest.raises(ValueError, match="No colony was at risk"):
            ask([])
    with pytest.raises(ValueError, match="No colony was at risk"):
        loss_share(start=2, increase=0, removed=2, end=0)
