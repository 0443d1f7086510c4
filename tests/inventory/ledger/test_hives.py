"""Many colonies looked at together: all that do not live on the day are told at once."""

import datetime as dt

import pytest

from inventory.errors import ColonyEnded, ColonyNotStarted, Several
from inventory.ledger.hives import living
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY


def test_living_colonies_come_back_as_they_are_now_by_key():
    hive, other = makers.make_colony(), makers.make_colony()
    hive.tag = "typed over"
    rows = living([hive, other, hive], DAY)
    assert set(rows) == {hive.pk, other.pk}
    assert rows[hive.pk].tag != "typed over"


def test_each_colony_that_does_not_live_on_the_day_is_told():
    dead, late = makers.make_dead_colony(ended=DAY), makers.make_colony(day=DAY + dt.timedelta(days=9))
    with pytest.raises(Several) as refused:
        living([dead, late, makers.make_colony()], DAY)
    assert [type(problem) for problem in refused.value.problems] == [ColonyEnded, ColonyNotStarted]
