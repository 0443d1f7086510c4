"""The balance a plan leaves, by hand (see small.py), and what is missing down the line without a pack."""

import numpy as np

from planner.plan.flows import Flows, chain_of, later, products_first
from planner.sizing.reading import problem_of
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


def test_without_its_packs_a_line_is_missing_in_pieces_and_in_what_is_made_of_them():
    """Season 2 wants 12 of ten owned from week 24: two in pieces are missed in week 20, two boxes from week 24."""
    flows = Flows(small.problem(), small.plan())
    gained = flows.brought("north-box", 0, 2)[small.FLAT]
    missing = flows.missing(small.FLAT, gained)
    assert [gap.max() for gap in missing[small.FLAT]] == [0, 2, 0, 10]
    assert [gap.max() for gap in missing[small.BOX]] == [0, 2, 0, 10]
    assert int(np.argmax(missing[small.FLAT][1] > 0)) == 20
    assert int(np.argmax(missing[small.BOX][1] > 0)) == 24


def test_what_is_made_ahead_of_any_need_is_missed_by_no_use():
    scenarios = [small.solved(number, wanted) for number, wanted in enumerate(small.WANTED)]
    scenarios[0]["made"] = [{"recipe": "assemble-box-medium-10", "period": 5, "units": 10}]
    flows = Flows(small.problem(), small.plan(scenarios=scenarios))
    missing = flows.missing(small.FLAT, flows.brought("north-box", 0, 2)[small.FLAT])
    assert missing[small.FLAT][0].max() == 10 and missing[small.BOX][0].max() == 0


def test_the_scarcest_material_decides_what_is_not_made():
    """Half the sheets for ten frames are lost: five framed sheets are not made, whatever frames lie ready."""
    data = small.problem_data()
    data["recipes"][0]["takes"] = {small.FLAT: 1, "guard-10": 2}
    data["stock"].append({"part": "guard-10", "location": "shed", "quantity": 20})
    flows = Flows(problem_of(data), small.plan())
    missing = flows.missing("guard-10", np.full(52, 10.0))
    assert missing["guard-10"][3].max() == 10
    assert missing[small.BOX][3].max() == 5


def test_what_making_uses_up_is_counted():
    taken = Flows(small.problem(), small.plan()).taken(small.FLAT)
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
