"""A study told as JSON and read back."""

import json

from planner.solution.nearby import BudgetPoint, LessMoney, Moved, Nearby, as_json, nearby_of

MOVED = Moved(
    offer="boxes",
    period=0,
    packs=4,
    step=1,
    cost_change=10.0,
    worth_change=-2.5,
    over_budget=0.0,
    served=True,
    limit="",
)
POINT = BudgetPoint(
    budget=50.0, spend=40.0, objective=60.0, bound=61.0, fractions=61.5, packs={("boxes", 0): 4}
)
NEARBY = Nearby(
    moves=(MOVED,),
    points=(POINT,),
    knee=0,
    next_budget=100.0,
    next_earns=12.0,
    less=LessMoney(budget=20.0, lost=30.0, changes=(("boxes", 0, 4, 2),)),
    budget_price=1.5,
    seconds=0.25,
    not_told="",
)
EMPTY = Nearby(
    moves=(),
    points=(),
    knee=None,
    next_budget=None,
    next_earns=None,
    less=None,
    budget_price=None,
    seconds=0.0,
    not_told="There is no order.",
)


def test_a_study_comes_back_from_its_json_as_it_was():
    for nearby in (NEARBY, EMPTY):
        assert nearby_of(json.loads(json.dumps(as_json(nearby)))) == nearby


def test_every_key_is_written_even_where_nothing_is_known():
    assert set(as_json(EMPTY)) == set(as_json(NEARBY))
    assert as_json(EMPTY)["less"] is None


def test_packs_of_a_point_are_lines_of_offer_period_and_packs():
    assert as_json(NEARBY)["points"][0]["packs"] == [{"offer": "boxes", "period": 0, "packs": 4}]
