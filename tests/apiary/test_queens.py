"""Where a colony's queen is from, by its history."""

import datetime as dt

import pytest

from apiary import colonies
from apiary.queens import QueenFrom, queen_of
from tests import makers

pytestmark = pytest.mark.django_db
MAY = dt.date(2025, 5, 10)


def test_the_last_queen_told_counts_until_its_act_is_undone():
    colony = makers.make_colony()
    colonies.requeen(colony, queen="cell", day=MAY, who=None)
    colonies.requeen(colony, queen="bought", day=MAY, who=None, note="red dot", act_key="k")
    assert queen_of(colony).words == "a mated queen, bought: red dot"
    colonies.undo("k", who=None, day=MAY)
    assert queen_of(colony).words == "a queen cell given"


def test_every_word_for_a_queen_says_where_she_is_from():
    assert set(QueenFrom.values) == {"raised", "cell", "mated", "bought", "mother", "swarm"}
    assert all(str(word) for word in QueenFrom.labels)
