"""Shadow prices by scenario, weighed: against solving again with a little more."""

from dataclasses import replace

import pytest

from planner.sizing.reading import problem_of
from planner.sizing.records import Stock
from planner.solution import solve
from tests.planner.small_problems import small, years

MORE = 1e-3


def problem_with(**changes):
    return problem_of(
        small(
            scenarios=years((0.25, 2), (0.75, 8)),
            parts=[{"code": "box"}, {"code": "flat"}],
            recipes=[{"code": "nail", "takes": {"flat": 1}, "makes": {"box": 1}, "work_minutes": 10}],
            offer={"parts": {"flat": 1}},
            **changes,
        )
    )


def worth(problem, packs):
    return solve(problem, packs=packs, gap=0, way="direct", prices=False).objective


@pytest.mark.parametrize("bad_years", [{"weight": 0}, {"weight": 0.5, "share": 0.5}])
def test_prices_are_what_a_little_more_earns(bad_years):
    problem = problem_with(work={"minutes_per_period": [22, 13, 0]}, bad_years=bad_years)
    plan = solve(problem, gap=0, way="two-phase")
    packs, prices = plan.packs(), plan.shadow_prices
    base = worth(problem, packs)
    for part in ("box", "flat"):
        more = replace(problem, stock=(Stock(part=part, location="shed", quantity=MORE),))
        assert (worth(more, packs) - base) / MORE == pytest.approx(prices.parts[part], abs=1e-4)
    longer = replace(problem, work=replace(problem.work, minutes_per_period=(22 + MORE, 13, 0)))
    gained = sum(minutes[0] for minutes in prices.work.values())
    assert (worth(longer, packs) - base) / MORE == pytest.approx(gained, abs=1e-4)
    assert prices.budget is None


def test_both_ways_give_the_same_prices():
    problem = problem_with(work={"minutes_per_period": [22, 13, 0], "cost_per_hour": 6}, budget=100)
    one, other = (solve(problem, gap=0, way=way).shadow_prices for way in ("direct", "two-phase"))
    assert one.parts == pytest.approx(other.parts)
    assert one.work.keys() == other.work.keys()
    assert all(one.work[code] == pytest.approx(other.work[code]) for code in one.work)
    assert one.budget == other.budget == 0
