"""A shed and a yard with gear, a colony with its hive, and a short way to begin and enter a count."""

import pytest

from inventory import counting
from tests import makers


@pytest.fixture
def shed(db):
    shed = makers.make_shed()
    makers.put(shed, {"box-medium-10": 20, "comb-medium-honey": 200, "stand": 10})
    return shed


@pytest.fixture
def yard(db):
    return makers.make_yard("fern-hollow")


@pytest.fixture
def colony(yard):
    """Two deeps and a medium super with ten combs."""
    colony = makers.make_colony("F-01", yard=yard, gear=True)
    makers.put(colony, {"box-medium-10": 1, "comb-medium-honey": 10})
    return colony


@pytest.fixture
def counted():
    """Begins a count of a place and enters {part: pieces} of it."""

    def begin(place, numbers, *, day=makers.DAY, **fields):
        count = counting.begin(location=place, day=day, who=None, key=makers.fresh_key(), **fields)
        rows = [(place, part, "sound", quantity) for part, quantity in numbers.items()]
        return counting.enter(count, rows)

    return begin
