"""What is done, read off the columns."""

import pytest

from planner.programme import build
from planner.programme.blocks import block
from planner.programme.merging import merging_of
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


BOARDS = {
    "parts": [{"code": "box"}, {"code": "boards"}, {"code": "lid"}],
    "periods": 6,
    "offer": {"parts": {"boards": 1}},
    "recipes": [
        {"code": "nail", "takes": {"boards": 1}, "makes": {"box": 1}, "work_minutes": 20},
        {"code": "plane", "takes": {"boards": 1}, "makes": {"lid": 1}, "work_minutes": 10},
    ],
}


def two_uses():
    rows = years((1, 4), first=3, last=3)
    use = rows[0]["uses"][0]
    rows[0]["uses"] = [use | {"keeps": {"box": 1, "lid": 1}}, use | {"code": "late", "first": 5, "last": 5}]
    return rows


def test_runs_due_alike_fill_the_periods_by_equal_share_as_the_minutes_allow():
    minutes = {"minutes_per_period": [30, 0, 10, 100, 0, 90]}
    problem = small_problem(**BOARDS, work=minutes, scenarios=two_uses())
    made = read(problem, runs_s0_nail_3=4, runs_s0_plane_3=2).scenarios[0].made
    nailed = {period: runs for (recipe, period), runs in made.items() if recipe == "nail"}
    assert nailed == pytest.approx({0: 1.2, 2: 0.4, 3: 2.4})
    assert all(made["plane", period] == pytest.approx(runs / 2) for period, runs in nailed.items())


def test_runs_due_first_are_begun_first():
    minutes = {"minutes_per_period": [30, 0, 10, 100, 0, 90]}
    problem = small_problem(**BOARDS, work=minutes, scenarios=two_uses())
    made = read(problem, runs_s0_nail_3=2, runs_s0_nail_5=6).scenarios[0].made
    assert made == pytest.approx({("nail", 0): 1.5, ("nail", 2): 0.5, ("nail", 3): 5, ("nail", 5): 1})


def test_packs_landing_take_their_minutes_first():
    minutes = {"minutes_per_period": [30, 0, 10, 100, 0, 90]}
    offer = {"parts": {"boards": 1}, "work_minutes": 5}
    problem = small_problem(**BOARDS | {"offer": offer}, work=minutes, scenarios=two_uses())
    made = read(problem, packs_now_boxes_0=2, runs_s0_nail_3=2).scenarios[0].made
    assert made == pytest.approx({("nail", 0): 1, ("nail", 2): 0.5, ("nail", 3): 0.5})


def test_a_given_order_takes_its_minutes_where_the_programme_has_none():
    problem = small_problem(**BOARDS | {"offer": {"work_minutes": 5}}, scenarios=two_uses())
    programme = build(problem)
    assert acts_of(programme, {}, {("boxes", 0): 3}).packs == {("boxes", 0): 3}


def test_runs_without_work_are_begun_in_the_period_they_are_due():
    problem = small_problem(**BOARDS, scenarios=two_uses())
    assert read(problem, runs_s0_nail_3=2).scenarios[0].made == {("nail", 3): 2}


def test_what_changes_nothing_is_not_done():
    problem = small_problem(use={"keeps": {}, "value": 0})
    assert read(problem).scenarios[0].served == {"super": 0}


def test_trips_are_counted_whole():
    assert [ceil_trips(weight, 24) for weight in (24, 24.000001, 25, 48)] == [1, 1, 2, 2]


def merged_acts(values):
    """Two yards' supers and the grids that wait for them, 6 supers and 3 grids in all."""
    uses = [
        {"code": code, "location": "shed", "first": 1, "last": 1, "units": units, "value": value}
        for code, units, value in (("a", 4, 9), ("b", 2, 5))
    ]
    uses += [use | {"code": f"grid-{use['code']}", "needs_use": use["code"], "per": 0.5} for use in uses]
    for use in uses[2:]:
        use["units"] /= 2
    problem = small_problem(scenarios=[{"code": "year", "probability": 1, "uses": uses}])
    found = block(problem, 0, merging_of(problem, 0))
    columns = [column for column, _ in found.groups]
    return acts_of(found.programme, dict(zip(columns, values, strict=True))).scenarios[0].served


def test_merged_uses_others_wait_for_are_served_to_one_share_and_the_rest_best_first_within_it():
    assert merged_acts([3, 1.25]) == {"a": 2, "b": 1, "grid-a": 1, "grid-b": 0.25}
    assert merged_acts([6, 3]) == {"a": 4, "b": 2, "grid-a": 2, "grid-b": 1}
    assert merged_acts([0, 0]) == {"a": 0, "b": 0, "grid-a": 0, "grid-b": 0}
