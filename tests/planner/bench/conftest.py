"""Shared by the tests of measuring: small invented seasons of the catalogue's parts and the demo's prices."""

import json
from pathlib import Path

import pytest

from planner.bench.instances import Size, invented, season_problem

FIXTURES = Path(__file__).parents[3] / "fixtures"


@pytest.fixture(scope="session")
def catalogue():
    return json.loads((FIXTURES / "catalogue.json").read_text(encoding="utf-8"))


@pytest.fixture(scope="session")
def market():
    return json.loads((FIXTURES / "demo.json").read_text(encoding="utf-8"))


@pytest.fixture(scope="session")
def small_operation(catalogue, market):
    """Makes an operation of two yards and a few colonies."""

    def make(*, yards=2, colonies=12, seed=1):
        return invented(catalogue, market, Size(yards=yards, colonies=colonies), seed=seed)

    return make


@pytest.fixture(scope="session")
def small_season(small_operation):
    """Makes the sizing problem of such an operation."""

    def make(*, yards=2, colonies=12, seed=1, scenarios=2, **settings):
        operation = small_operation(yards=yards, colonies=colonies, seed=seed)
        return season_problem(operation, scenarios=scenarios, seed=seed, **settings)

    return make
