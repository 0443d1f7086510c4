"""A signed-in keeper, a shed with gear, a yard with colonies."""

import datetime as dt

import pytest

from inventory import ledger
from inventory.ledger import Line
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


@pytest.fixture
def moved(shed, yard):
    """Five deep boxes went from the shed to the yard on 10 May 2025."""
    lines = [Line("box-deep-10", 5)]
    day = dt.date(2025, 5, 10)
    return ledger.move(source=shed, target=yard, lines=lines, day=day, who=None, key=makers.fresh_key())
