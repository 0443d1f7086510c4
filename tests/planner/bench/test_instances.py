"""Invented operations: of the size asked for, the same by seed, alike to the demo, fit to be planned."""

import pytest

from planner.bench.instances import Size, invented, season_problem
from planner.sizing.reading import problem_of
from planner.sizing.writing import as_json


@pytest.mark.parametrize(("yards", "colonies"), [(6, 90), (12, 300), (40, 1000), (80, 2000)])
def test_an_operation_has_the_yards_and_colonies_asked_for(catalogue, market, yards, colonies):
    operation = invented(catalogue, market, Size(yards=yards, colonies=colonies), seed=3)
    assert len(operation.yards) == yards + 1  # and the shed
    assert sum(group.colonies for group in operation.colonies) == colonies
    assert {group.yard for group in operation.colonies} <= {yard.code for yard in operation.yards}


def test_the_same_seed_gives_the_same_operation_and_another_seed_another(small_operation):
    assert small_operation(seed=5) == small_operation(seed=5)
    assert small_operation(seed=5) != small_operation(seed=6)


def test_yards_have_room_for_their_colonies(small_operation):
    operation = small_operation(yards=6, colonies=90)
    for yard in operation.yards:
        standing = sum(group.colonies for group in operation.colonies if group.yard == yard.code)
        assert standing <= yard.stands


def test_stock_grows_with_the_colonies_and_the_market_stays(catalogue, market):
    few, many = (invented(catalogue, market, Size(yards=6, colonies=n), seed=1) for n in (90, 900))
    boxes = [
        sum(row.quantity for row in operation.stock if row.part == "box-medium-10")
        for operation in (few, many)
    ]
    assert 7 < boxes[1] / boxes[0] < 13
    assert few.offers == many.offers and len(few.offers) == len(market["prices"])


def test_a_season_covers_52_weeks_and_is_a_problem_file_without_fault(small_season):
    problem = small_season(scenarios=3)
    assert problem.periods == 52 and len(problem.scenarios) == 3
    assert problem_of(as_json(problem)) == problem


def test_the_budget_goes_by_the_colonies(small_operation):
    operation = small_operation(colonies=12)
    assert season_problem(operation, scenarios=1, seed=1, budget_a_colony=20).budget == 240
