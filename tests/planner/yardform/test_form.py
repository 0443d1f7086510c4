"""The yard form against the naive one: the same to all digits where hauling is free, near where it costs."""

import pytest

from planner.bench.instances import REGION
from planner.bench.naive import naive_form, without_choices
from planner.programme import build
from planner.season.assumptions import assumptions_of
from planner.sizing.reading import problem_of
from planner.solution import highs, solve
from planner.yardform import with_hauling, yard_problem
from planner.yardform.form import at


def relaxed(lp):
    return highs.solve(highs.matrix_of(lp), relaxed=True).objective


@pytest.fixture
def hauled(small_operation, small_season):
    """Makes a small season with its ways, at a share of their cost."""

    def make(cost_share, seed=1):
        operation = small_operation(seed=seed)
        told = assumptions_of({}, start=operation.day, region=REGION)
        return with_hauling(operation, told, small_season(seed=seed), cost_share=cost_share)

    return make


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_where_hauling_is_free_it_is_the_naive_form_to_a_millionth(hauled, seed):
    problem = without_choices(hauled(0.0, seed))
    naive = relaxed(naive_form(problem, lean=True).lp)
    assert relaxed(build(yard_problem(problem)).lp) == pytest.approx(naive, rel=1e-6)


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_where_hauling_costs_it_is_near_the_naive_form(hauled, seed):
    problem = without_choices(hauled(1.0, seed))
    naive = relaxed(naive_form(problem, lean=True).lp)
    assert relaxed(build(yard_problem(problem)).lp) == pytest.approx(naive, rel=0.005)


def box_problem(*, stock_at="hill", keeps=None, cost=0.5, cover_weight=4):
    """One super at the hill and one box in stock; a box weighs 10 lb and its combs 2 each."""
    return problem_of(
        {
            "periods": 3,
            "parts": [
                {"code": "box-medium-10", "weight_lb": 10},
                {"code": "comb-medium-honey", "weight_lb": 2},
                {"code": "cover-10", "weight_lb": cover_weight},
                {"code": "feeder-10", "weight_lb": 6},
            ],
            "locations": ["shed", "hill"],
            "stock": [
                {"part": "box-medium-10", "location": stock_at, "quantity": 1},
                {"part": "comb-medium-honey", "location": stock_at, "quantity": 9},
                {"part": "cover-10", "location": stock_at, "quantity": 1},
                {"part": "feeder-10", "location": stock_at, "quantity": 1},
            ],
            "hauls": [
                {"from": "shed", "to": "hill", "cost_per_lb": cost},
                {"from": "hill", "to": "shed"},
            ],
            "scenarios": [
                {
                    "code": "year",
                    "probability": 1,
                    "uses": [
                        {
                            "code": "super/hill/clover/strong/1",
                            "location": "hill",
                            "first": 1,
                            "last": 1,
                            "units": 1,
                            "value": 50,
                            "keeps": keeps or {"box-medium-10": 1, "comb-medium-honey": 9},
                        }
                    ],
                }
            ],
        }
    )


def worth(problem):
    return solve(problem, prices=False).objective


def test_a_super_from_the_shed_pays_for_the_box_and_the_combs_that_ride_in_it():
    assert worth(yard_problem(box_problem(stock_at="shed"))) == pytest.approx(50 - 0.5 * 28)


def test_a_super_that_lies_at_its_yard_costs_no_way():
    assert worth(yard_problem(box_problem(stock_at="hill"))) == pytest.approx(50)


def test_a_feeder_pays_its_own_way_where_no_box_goes_along():
    assert worth(yard_problem(box_problem(stock_at="shed", keeps={"feeder-10": 1}))) == pytest.approx(50 - 3)


def test_what_stands_under_a_hive_rides_with_its_cover():
    keeps = {"box-medium-10": 1, "cover-10": 1, "feeder-10": 1}
    assert worth(yard_problem(box_problem(stock_at="shed", keeps=keeps))) == pytest.approx(50 - 0.5 * 20)


def test_the_exact_form_says_the_same_of_these_ways():
    for place in ("shed", "hill"):
        problem = box_problem(stock_at=place)
        assert worth(yard_problem(problem)) == pytest.approx(worth(problem))


def test_only_boxes_and_covers_are_told_by_yard(hauled):
    found = yard_problem(hauled(1.0))
    told = {part.code for part in found.parts if "@" in part.code}
    assert at("box-medium-10", "yard-01") in told
    assert all(code.startswith(("box-", "nuc-box-", "cover-")) for code in told)
    assert found.hauls == ()
