"""One small golden .lp for each family of constraints: what the programme says, word for word.

After a change that is meant: `python -m tests.planner.programme.test_golden` writes them anew; read the difference.
"""

from pathlib import Path

import pytest

from planner.programme import FAMILIES, build
from tests.planner.small_problems import small_problem, years

GOLDEN = Path(__file__).resolve().parent.parent / "golden"
TWO_PRICES = [{"from_packs": 1, "price": 10}, {"from_packs": 5, "price": 8}]
HAULED = {
    "locations": ["shed", "hill"],
    "part": {"weight_lb": 8},
    "hauls": [{"from": "shed", "to": "hill", "cost_per_lb": 0.1, "trip_cost": 6, "trip_lb": 24}],
}
LINKED = {
    "code": "second",
    "location": "shed",
    "first": 2,
    "last": 2,
    "units": 9,
    "value": 5,
    "needs_use": "super",
    "per": 2,
}


def uses_in_turn():
    rows = years((1, 4))
    rows[0]["uses"].append(rows[0]["uses"][0] | {"code": "later", "first": 2, "last": 2})
    return rows


def linked_uses():
    rows = years((1, 4))
    rows[0]["uses"].append(LINKED)
    return rows


PROBLEMS = {
    "balance": lambda: small_problem(
        stock=[{"part": "box", "location": "shed", "quantity": 1}],
        scenarios=[
            row | {"arrivals": [{"part": "box", "location": "shed", "period": 2, "quantity": 3}]}
            for row in years((1, 4), last=2)
        ],
    ),
    "use_limit": lambda: small_problem(use={"units": 2.5}),
    "must_use": lambda: small_problem(use={"must": True}),
    "whole_uses": lambda: small_problem(whole_uses=True),
    "needs_use": lambda: small_problem(scenarios=linked_uses()),
    "whole_packs": lambda: small_problem(offer={"parts": {"box": 3}}),
    "order_limit": lambda: small_problem(offer={"max_packs": 2, "prices": TWO_PRICES}),
    "all_units": lambda: small_problem(offer={"prices": TWO_PRICES}),
    "incremental": lambda: small_problem(offer={"prices": TWO_PRICES, "price_rule": "incremental"}),
    "fixed_packs": lambda: small_problem(offer={"prices": TWO_PRICES}),
    "order_fee": lambda: small_problem(supplier={"order_fee": [7, 5, 0]}, offer={"order_periods": [0, 1]}),
    "free_from": lambda: small_problem(supplier={"order_fee": 7, "free_from": 30}),
    "budget": lambda: small_problem(supplier={"order_fee": 7}, budget=35),
    "later_budget": lambda: small_problem(
        offer={"when": "later"}, later_budget=35, scenarios=years((0.5, 2), (0.5, 8))
    ),
    "work_minutes": lambda: small_problem(
        parts=[{"code": "box"}, {"code": "boards"}],
        offer={"parts": {"boards": 1}},
        recipes=[{"code": "nail", "takes": {"boards": 1}, "makes": {"box": 1}, "work_minutes": 20}],
        work={"minutes_per_period": [30, 45, 60], "cost_per_hour": 6},
        scenarios=uses_in_turn(),
    ),
    "trips": lambda: small_problem(**HAULED, use={"location": "hill"}),
    "bad_years": lambda: small_problem(
        bad_years={"weight": 0.4, "share": 0.25}, scenarios=years((0.75, 4), (0.25, 1))
    ),
}


GIVEN = {"fixed_packs": {("boxes", 0): 6}}


def programme_of(family):
    return build(PROBLEMS[family](), packs=GIVEN.get(family))


def text_of(family, folder):
    path = Path(folder) / f"{family}.lp"
    programme_of(family).lp.writeLP(str(path))
    return path.read_text(encoding="utf-8")


@pytest.mark.parametrize("family", [function.__name__ for function in FAMILIES])
def test_each_family_says_what_its_golden_file_says(family, tmp_path):
    golden = GOLDEN / f"{family}.lp"
    assert golden.exists(), f"the family {family} has no golden file"
    assert text_of(family, tmp_path) == golden.read_text(encoding="utf-8")


def test_no_golden_file_is_left_without_its_family():
    assert {path.stem for path in GOLDEN.glob("*.lp")} == {function.__name__ for function in FAMILIES}


def test_every_row_ever_made_belongs_to_a_family():
    known = {function.__name__ for function in FAMILIES}
    for family in PROBLEMS:
        assert set(programme_of(family).families.values()) <= known


@pytest.mark.parametrize("function", FAMILIES, ids=lambda function: function.__name__)
def test_each_family_states_itself_and_what_its_price_means(function):
    assert "price" in function.__doc__
    assert any(sign in function.__doc__ for sign in ("≤", "≥", "=", "whole"))


if __name__ == "__main__":
    GOLDEN.mkdir(exist_ok=True)
    for name in PROBLEMS:
        text_of(name, GOLDEN)
