"""What is done, read off the columns."""

import pytest

from planner.programme import build
from planner.solution.acts import acts_of, ceil_trips, clean
from tests.planner.small_problems import small_problem, years


def read(problem, **by_name):
    programme = build(problem)
    values = {column: by_name.get(column.name, 0.0) for column in programme.lp.variables()}
    return acts_of(programme, values)


def test_last_digits_are_cleaned_and_dust_is_swept():
    assert clean(2.99999999) == 3
    assert clean(-1e-12) == 0
    assert clean(0.25) == 0.25
    acts = read(small_problem(), packs_now_boxes_0=3.9999999999, use_s0_super=1e-12)
    assert acts.packs == {("boxes", 0): 4}
    assert acts.scenarios[0].served == {"super": 0}


def test_uses_that_share_a_column_are_filled_one_after_another():
    scenarios = years((1, 4))
    scenarios[0]["uses"].append(scenarios[0]["uses"][0] | {"code": "other", "units": 3})
    acts = read(small_problem(scenarios=scenarios), use_s0_super=5.5)
    assert acts.scenarios[0].served == {"super": 4, "other": 1.5}


def test_must_uses_are_served_in_full_without_a_column():
    assert read(small_problem(use={"must": True})).scenarios[0].served == {"super": 4}


def test_packs_of_all_steps_are_one_order():
    steps = [{"from_packs": 1, "price": 10}, {"from_packs": 3, "price": 8}]
    problem = small_problem(offer={"prices": steps, "price_rule": "incremental"})
    acts = read(problem, packs_now_boxes_0_step1=2, packs_now_boxes_0_step2=2)
    assert acts.packs == {("boxes", 0): 4}


def test_runs_of_a_stretch_fill_its_periods_as_the_minutes_allow():
    problem = small_problem(
        parts=[{"code": "box"}, {"code": "boards"}],
        periods=5,
        offer={"parts": {"boards": 1}},
        recipes=[
            {"code": "nail", "takes": {"boards": 1}, "makes": {"box": 1}, "work_minutes": 20},
            {"code": "paint", "takes": {"box": 1}, "makes": {"box": 1}, "cost": 0.1},
        ],
        work={"minutes_per_period": [30, 0, 10, 100, 0]},
        use={"first": 3, "last": 3},
    )
    acts = read(problem, runs_s0_nail_3=4, runs_s0_paint_3=2)
    made = acts.scenarios[0].made
    assert made["nail", 0] == pytest.approx(1.5)
    assert made["nail", 2] == pytest.approx(0.5)
    assert made["nail", 3] == pytest.approx(2)
    assert ("nail", 1) not in made
    assert made["paint", 3] == pytest.approx(1)  # alike by share
    free = read(problem, runs_s0_paint_3=2)
    assert free.scenarios[0].made == {("paint", 0): 2}


def test_what_changes_nothing_is_not_done():
    problem = small_problem(use={"keeps": {}, "value": 0})
    assert read(problem).scenarios[0].served == {"super": 0}


def test_trips_are_counted_whole():
    assert [ceil_trips(weight, 24) for weight in (24, 24.000001, 25, 48)] == [1, 1, 2, 2]
