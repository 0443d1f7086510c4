"""A contender's figures from its worths: mean, worst season in twenty, season against the same season."""

import pytest

from planner.trial.records import Contender


def contender(*worths, key="ours"):
    return Contender(key=key, packs={}, spend=0.0, worths=tuple(worths))


def test_the_worst_season_in_twenty_is_the_least_of_twenty():
    assert contender(*range(20)).bad_year == 0


def test_orders_are_compared_season_against_the_same_season():
    """Luck that meets both alike does not blur the difference."""
    ours, theirs = contender(110, 10, 60), contender(100, 0, 50)
    over = ours.over(theirs)
    assert (over.value, over.reach) == (10, pytest.approx(0))
    assert ours.mean.reach > 50
    assert ours.span_over(theirs) == (10, 10)


def test_one_tried_on_fewer_seasons_is_compared_on_those():
    assert contender(10, 20).over(contender(5, 5, 500)).value == 10
    assert contender(10, 20).over(contender(5, 5, 500)).count == 2
