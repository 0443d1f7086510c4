"""Columns, rows and money while they are gathered."""

from planner.programme.draft import Draft, add, add_all, mark
from tests.planner.small_problems import small_problem


def test_terms_add_up_and_zeros_are_left_out():
    terms = {}
    add(terms, "x", 2.0)
    add(terms, "y", 0.0)
    add_all(terms, {"x": 1.0, "z": 4.0}, 0.5)
    assert terms == {"x": 2.5, "z": 2.0}


def test_a_row_without_terms_still_says_what_it_says():
    draft = Draft(small_problem())
    name = draft.row("balance", "box", terms={}, sense=">=", bound=3)
    row = draft.lp.get_constraint_by_name(name)
    assert [(column.name, column.upBound) for column in row] == [("nothing", 0)]
    assert -row.constant == 3


def test_a_unit_is_worth_its_end_value_less_holding_from_when_it_comes():
    draft = Draft(small_problem(part={"end_value": 5, "holding_cost": [1, 0.5, 0.25]}))
    assert draft.worth["box"] == [3.25, 4.25, 4.75, 5]


def test_slacks_are_made_only_where_limits_may_give():
    assert Draft(small_problem()).slack("budget", None, 5, weight=1) is None
    draft = Draft(small_problem(), ease="limits")
    column = draft.slack("budget", None, 5, weight=2)
    assert draft.penalties == {column: -2}
    assert (mark(None), mark(3)) == ("now", "s3")
