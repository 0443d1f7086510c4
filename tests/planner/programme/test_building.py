"""The programme as a whole: what is shared, what is merged, what is left out."""

import gc

import pytest

from planner.programme import build
from planner.programme.building import undisturbed
from tests.planner.small_problems import small_problem, years

NAILING = {
    "parts": [{"code": "box"}, {"code": "boards"}],
    "offer": {"parts": {"boards": 1}},
    "recipes": [{"code": "nail", "takes": {"boards": 1}, "makes": {"box": 1}, "work_minutes": 20}],
    "work": {"minutes_per_period": [30] * 12},
    "periods": 12,
}


def names(programme):
    return {column.name for column in programme.lp.variables()}


def test_here_and_now_packs_are_one_decision_for_all_years():
    programme = build(small_problem(scenarios=years((0.5, 2), (0.5, 8))))
    assert {name for name in names(programme) if name.startswith("packs")} == {"packs_now_boxes_0"}


def test_later_packs_are_decided_by_year():
    programme = build(small_problem(scenarios=years((0.5, 2), (0.5, 8)), offer={"when": "later"}))
    assert {name for name in names(programme) if name.startswith("packs")} == {
        "packs_s0_boxes_0",
        "packs_s1_boxes_0",
    }


def test_runs_are_told_apart_only_where_it_matters():
    problem = small_problem(**NAILING, use={"first": 8, "last": 10})
    assert [(run.first, run.last) for run in build(problem).runs] == [(0, 8)]


def test_a_holding_cost_keeps_every_period_apart():
    problem = small_problem(**NAILING | {"parts": [{"code": "box", "holding_cost": 1}, {"code": "boards"}]})
    assert [run.first for run in build(problem).runs] == list(range(2))


def test_an_order_that_lands_past_the_horizon_is_dropped():
    problem = small_problem(offer={"lead_periods": 2, "order_periods": [0, 1, 2], "max_packs": 5})
    assert [order.period for order in build(problem).orders] == [0]


def test_of_periods_alike_in_all_but_time_only_the_first_stays():
    assert [order.period for order in build(small_problem(offer={"order_periods": [2, 0, 1]})).orders] == [0]
    held = small_problem(offer={"order_periods": [0, 1, 2]}, part={"holding_cost": 1})
    assert len(build(held).orders) == 3
    paid = small_problem(offer={"order_periods": [0, 1, 2]}, supplier={"order_fee": 3})
    assert len(build(paid).orders) == 3


def test_uses_alike_share_a_column():
    scenarios = years((1, 4))
    scenarios[0]["uses"].append(scenarios[0]["uses"][0] | {"code": "other", "units": 3})
    programme = build(small_problem(scenarios=scenarios))
    assert [[use.code for use in row.uses] for row in programme.served] == [["super", "other"]]
    assert next(iter(programme.served)).column.upBound == 7


def test_a_part_nobody_wants_has_no_row():
    problem = small_problem(parts=[{"code": "box"}, {"code": "lid"}], offer={"parts": {"box": 1, "lid": 1}})
    assert [name for name, family in build(problem).families.items() if "lid" in name] == []


def test_a_row_stands_only_where_gear_goes_before_more_comes():
    scenarios = years((1, 4))
    first = scenarios[0]["uses"][0]
    scenarios[0]["uses"] = [
        first | {"code": f"use-{at}", "first": at, "last": 7, "value": 25 + at} for at in range(4)
    ]
    programme = build(small_problem(periods=9, scenarios=scenarios))
    assert [name for name, family in programme.families.items() if family == "balance"] == [
        "balance_s0_all_box_3"
    ]


def test_bad_years_need_more_than_one_year():
    assert "bad_years" not in build(small_problem(bad_years={"weight": 0.5})).families.values()
    two = small_problem(bad_years={"weight": 0.5}, scenarios=years((0.5, 1), (0.5, 2)))
    assert list(build(two).families.values()).count("bad_years") == 2


def test_a_given_order_must_be_one_that_can_be_placed():
    with pytest.raises(ValueError, match='no here-and-now order of offer "boxes" can be placed in period 2'):
        build(small_problem(), packs={("boxes", 2): 1})


def test_names_made_from_odd_codes_do_not_collide():
    scenarios = years((1, 4))
    use = scenarios[0]["uses"][0]
    scenarios[0]["uses"] = [
        use | {"code": code, "value": 20 + at} for at, code in enumerate(("a-b", "a b", "a_b"))
    ]
    programme = build(small_problem(scenarios=scenarios))
    assert len({name for name in names(programme) if name.startswith("use")}) == 3


def test_the_collector_runs_again_after_building_even_where_that_failed():
    with undisturbed():
        assert not gc.isenabled()
    assert gc.isenabled()
    with pytest.raises(ValueError, match="no here-and-now order"):
        build(small_problem(), packs={("boxes", 2): 1})
    assert gc.isenabled()


def test_a_collector_that_was_off_stays_off():
    gc.disable()
    try:
        build(small_problem())
        assert not gc.isenabled()
    finally:
        gc.enable()
