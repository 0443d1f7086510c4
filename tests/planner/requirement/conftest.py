"""Shared by the requirement's tests: the season's gear and the sizing problem of the invented operation."""

import pytest

from planner.projection import project
from planner.requirement import sizing_problem
from planner.requirement.season_gear import SeasonGear
from planner.season.assumptions import assumptions_of
from planner.season.scenarios import draw
from tests.planner.operations import operation


@pytest.fixture
def season_gear(answers):
    def make(whole=None, **given):
        whole = whole or operation()
        return SeasonGear(operation=whole, assumptions=answers(start=whole.day, **given))

    return make


@pytest.fixture
def season_problem():
    """Makes the sizing problem of an operation."""

    def make(whole=None, *, count=6, seed=1, budget=None, region="north", **given):
        whole = whole or operation()
        told = assumptions_of(given, start=whole.day, region=region)
        projections = [project(whole, told, drawn) for drawn in draw(whole, told, count=count, seed=seed)]
        return sizing_problem(whole, told, projections, budget=budget)

    return make
