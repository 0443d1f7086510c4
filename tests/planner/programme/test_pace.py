"""What recipes take and make, net, and whether they may wait."""

from planner.programme.draft import Draft
from tests.planner.small_problems import small_problem

PARTS = [{"code": "box", "end_value": 2}, {"code": "boards", "end_value": 0.5}]
NAIL = {"code": "nail", "takes": {"boards": 1}, "makes": {"box": 1}, "work_minutes": 20, "cost": 0.5}
LIMITED = {"minutes_per_period": [30, 30, 30]}


def pace(recipe=NAIL, *, parts=PARTS, work=LIMITED, **changes):
    problem = small_problem(
        parts=parts, offer={"parts": {"boards": 1}}, recipes=[recipe], work=work, **changes
    )
    return Draft(problem).paces[0]


def test_what_is_given_back_is_neither_taken_nor_made():
    tool = NAIL | {"takes": {"boards": 1, "box": 1}, "makes": {"box": 1}}
    assert (pace(tool).takes, pace(tool).makes) == ({"boards"}, frozenset())
    later = pace(tool | {"lead_periods": 1})
    assert (later.takes, later.makes) == ({"boards", "box"}, {"box"})


def test_a_run_is_worth_what_it_makes_less_what_it_takes_its_cost_and_its_work():
    found = pace(work={"cost_per_hour": 3})
    assert found.changes == {("boards", 0): -1, ("box", 0): 1}
    assert found.worths == (2 - 0.5 - 0.5 - 1,) * 3


def test_holding_costs_make_a_run_worth_more_the_later():
    held = [{"code": "box", "end_value": 2, "holding_cost": [1, 0.5, 0.25]}, {"code": "boards"}]
    assert pace(parts=held, work={}).worths == (2 - 1.75 - 0.5, 2 - 0.75 - 0.5, 2 - 0.25 - 0.5)
    assert pace(NAIL | {"lead_periods": 1}, parts=held, work={}).worths == (2 - 0.75 - 0.5, 2 - 0.25 - 0.5)


def test_a_run_pays_by_itself_where_what_it_makes_ends_worth_more():
    assert pace().pays
    assert not pace(NAIL | {"cost": 1.5}).pays


def test_only_limited_minutes_are_shared():
    assert pace().shares
    assert not pace(work={}).shares
    assert not pace(NAIL | {"work_minutes": 0}).shares
    assert not pace(NAIL | {"lead_periods": 1}).shares


def test_recipes_that_feed_those_that_share_share_too():
    sawn = {"code": "saw", "takes": {"box": 1}, "makes": {"boards": 1}}
    problem = small_problem(parts=PARTS, offer={"parts": {"boards": 1}}, recipes=[NAIL, sawn], work=LIMITED)
    assert [row.shares for row in Draft(problem).paces] == [True, True]


def test_runs_wait_unless_waiting_costs_or_gear_is_hauled():
    dear_boards = [PARTS[0], {"code": "boards", "holding_cost": 1}]
    dear_boxes = [{"code": "box", "holding_cost": 1}, PARTS[1]]
    assert pace().pinned == () and pace().steady
    assert pace(parts=dear_boards).pinned == (0, 1, 2)
    assert pace(parts=dear_boxes).pinned == () and not pace(parts=dear_boxes).steady
    assert pace(locations=["shed", "hill"], hauls=[{"from": "shed", "to": "hill"}]).pinned == (0, 1, 2)
    assert pace(NAIL | {"lead_periods": 1}).pinned == (0, 1)
