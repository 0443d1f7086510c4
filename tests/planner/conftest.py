"""Shared by the planner's tests: the keeper signed in; answers, scenarios and projections of the invented operation."""

import pytest

from planner.projection import project
from planner.season.assumptions import assumptions_of
from planner.season.scenarios import draw
from tests import makers
from tests.planner.operations import DAY, operation


@pytest.fixture
def keeper(client, db):
    """The client of a keeper who is signed in."""
    makers.make_keeper()
    client.force_login(makers.make_person())
    return client


@pytest.fixture
def answers():
    """Makes assumptions of the answers that differ from the north's defaults."""

    def make(*, start=DAY, region="north", **given):
        return assumptions_of(given, start=start, region=region)

    return make


@pytest.fixture
def projected(answers):
    """Makes the projections of an operation; `count` scenarios, `seed`."""

    def make(whole=None, *, count=20, seed=1, start=None, region="north", **given):
        whole = whole or operation()
        told = answers(start=start or whole.day, region=region, **given)
        return [project(whole, told, scenario) for scenario in draw(whole, told, count=count, seed=seed)]

    return make
