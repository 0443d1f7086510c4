"""The plan file."""

import json
import random

from planner.sizing.reading import problem_of
from planner.solution import as_json, plan_of, solve
from tests.planner.random_problems import random_problem
from tests.planner.small_problems import small_problem

KEYS = {
    "status",
    "reason",
    "objective",
    "bound",
    "gap",
    "seconds",
    "solver",
    "here_and_now",
    "fees",
    "spend",
    "scenarios",
    "shadow_prices",
    "shadow_prices_withheld",
}
SCENARIO_KEYS = {"code", "objective", "later", "fees", "served", "short", "made", "hauled", "trips", "work"}


def test_every_key_is_written_with_an_order_and_without():
    written = as_json(solve(small_problem(), gap=0))
    assert set(written) == KEYS
    assert set(written["scenarios"][0]) == SCENARIO_KEYS
    assert set(written["here_and_now"][0]) == {"offer", "period", "packs", "units", "cost"}
    assert set(written["shadow_prices"]) == {"budget", "later_budget", "work", "parts"}
    assert set(as_json(solve(small_problem(use={"must": True}, budget=0)))) == KEYS


def test_whole_packs_are_written_as_whole_numbers():
    written = as_json(solve(small_problem(), gap=0))
    assert json.dumps(written["here_and_now"]) == (
        '[{"offer": "boxes", "period": 0, "packs": 4, "units": {"box": 4}, "cost": 40}]'
    )


def test_hauls_and_trips_are_written_from_and_to():
    problem = small_problem(
        locations=["shed", "hill"],
        part={"weight_lb": 8},
        hauls=[{"from": "shed", "to": "hill", "trip_lb": 100}],
        use={"location": "hill"},
    )
    scenario = as_json(solve(problem, gap=0))["scenarios"][0]
    assert {(row["from"], row["to"], row["part"]) for row in scenario["hauled"]} == {("shed", "hill", "box")}
    assert set(scenario["trips"][0]) == {"from", "to", "period", "trips"}


def test_any_plan_comes_back_the_same():
    for seed in range(60):
        plan = solve(problem_of(random_problem(random.Random(seed))), gap=0)
        assert plan_of(json.loads(json.dumps(as_json(plan), allow_nan=False))) == plan
