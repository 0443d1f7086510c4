"""What recipes take and make, net, and whether they may wait."""

from planner.programme.draft import Draft
from planner.programme.pace import changes, paces, worth_of
from tests.planner.small_problems import small_problem

PARTS = [{"code": "box", "end_value": 2}, {"code": "boards", "end_value": 0.5}]
NAIL = {"code": "nail", "takes": {"boards": 1}, "makes": {"box": 1}, "work_minutes": 20, "cost": 0.5}
LIMITED = {"minutes_per_period": [30, 30, 30]}


def pace(recipe=NAIL, *, parts=PARTS, work=LIMITED, pooled=True):
    problem = small_problem(parts=parts, offer={"parts": {"boards": 1}}, recipes=[recipe], work=work)
    return paces(Draft(problem), pooled)[0]


def test_what_is_given_back_is_neither_taken_nor_made():
    tool = NAIL | {"takes": {"boards": 1, "box": 1}, "makes": {"box": 1}}
    assert (pace(tool).takes, pace(tool).makes) == ({"boards"}, frozenset())
    later = pace(tool | {"lead_periods": 1})
    assert (later.takes, later.makes) == ({"boards", "box"}, {"box"})


def test_a_run_is_worth_what_it_makes_less_what_it_takes_its_cost_and_its_work():
    problem = small_problem(
        parts=PARTS, offer={"parts": {"boards": 1}}, recipes=[NAIL], work={"cost_per_hour": 3}
    )
    draft, recipe = Draft(problem), problem.recipes[0]
    assert changes(recipe) == {("boards", 0): -1, ("box", 0): 1}
    assert worth_of(draft, recipe, 1) == 2 - 0.5 - 0.5 - 1


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
    assert [row.shares for row in paces(Draft(problem), True)] == [True, True]


def test_runs_wait_unless_waiting_costs_or_gear_is_hauled():
    dear_boards = [PARTS[0], {"code": "boards", "holding_cost": 1}]
    dear_boxes = [{"code": "box", "holding_cost": 1}, PARTS[1]]
    assert pace().pinned == () and pace().steady
    assert pace(parts=dear_boards).pinned == (0, 1, 2)
    assert pace(parts=dear_boxes).pinned == () and not pace(parts=dear_boxes).steady
    assert pace(pooled=False).pinned == (0, 1, 2)
    assert pace(NAIL | {"lead_periods": 1}).pinned == (0, 1)
