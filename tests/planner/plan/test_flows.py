"""The balance a plan leaves, by hand (see small.py), and the order in which makings are taken back."""

import numpy as np

from planner.plan.flows import Flows, chain_of, later, products_first
from planner.sizing.records import Recipe
from tests.planner.plan import small


def recipe(code, takes, makes):
    return Recipe(code=code, takes={takes: 1}, makes={makes: 1})


def test_idle_follows_stock_packs_making_use_and_return():
    """Season 4: ten in store, 20 wanted; ten in pieces come in week 3, are built in week 20; all back in week 31."""
    idle = Flows(small.problem(), small.plan()).idle
    boxes, flat = idle[small.BOX][3], idle[small.FLAT][3]
    assert [boxes[week] for week in (0, 19, 20, 24, 26, 30, 31, 51)] == [10, 10, 20, 8, 0, 0, 20, 20]
    assert [flat[week] for week in (2, 3, 19, 20)] == [0, 10, 10, 0]


def test_nothing_of_an_optimal_plan_is_ever_below_zero():
    idle = Flows(small.problem(), small.plan()).idle
    assert min(pieces.min() for pieces in idle.values()) >= -1e-9


def test_without_a_line_only_its_own_packs_are_missing():
    plan = small.plan()
    missing = Flows(small.problem(), plan).without(plan.here_and_now[0])
    assert [gap.max() for gap in missing[small.FLAT]] == [0, 2, 0, 10]


def test_what_making_uses_up_is_counted_after_needless_making_is_taken_back():
    scenarios = [small.solved(number, wanted) for number, wanted in enumerate(small.WANTED)]
    scenarios[0]["made"] = [{"recipe": "assemble-box-medium-10", "period": 5, "units": 10}]
    taken = Flows(small.problem(), small.plan(scenarios=scenarios)).taken(small.FLAT)
    assert [row[-1] for row in taken] == [0, 2, 0, 10]


def test_what_falls_past_the_horizon_is_dropped():
    assert later(np.array([[1.0, 2.0, 3.0]]), 2).tolist() == [[0, 0, 1]]
    assert later(np.array([[1.0, 2.0]]), 0).tolist() == [[1, 2]]


def test_a_recipe_comes_after_all_that_take_what_it_makes():
    fit, nail, draw = (
        recipe("fit", "frame", "framed"),
        recipe("nail", "flat", "frame"),
        recipe("draw", "framed", "comb"),
    )
    assert products_first([nail, fit, draw]) == ["draw", "fit", "nail"]


def test_a_circle_of_recipes_ends():
    assert sorted(products_first([recipe("to", "a", "b"), recipe("back", "b", "a")])) == ["back", "to"]


def test_a_chain_counts_how_many_go_into_each_product():
    six = Recipe(code="kit", takes={"stick": 6}, makes={"crate": 2})
    assert chain_of("stick", [six, recipe("paint", "crate", "painted")]) == {
        "stick": 1,
        "crate": 3,
        "painted": 3,
    }
