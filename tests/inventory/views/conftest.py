"""A signed-in keeper, a shed with gear, a yard with colonies."""

import pytest

from tests import makers


@pytest.fixture
def keeper(client, db):
    makers.make_keeper(truck_lb=500)
    person = makers.make_person("keeper", is_superuser=True)
    client.force_login(person)
    return person


@pytest.fixture
def shed(db):
    shed = makers.make_shed()
    makers.put(shed, {"box-deep-10": 8, "box-deep-8": 3, "comb-medium-honey": 40, "sugar": 50})
    return shed


@pytest.fixture
def yard(db):
    return makers.make_yard("fern-hollow")


@pytest.fixture
def colony(yard):
    return makers.make_colony("F-01", yard=yard, gear=True)


@pytest.fixture
def deadout(yard):
    return makers.make_dead_colony(tag="F-02", yard=yard, gear=True)
