"""What seasons keep at yards: supers until pulled, left on as one stay, what is spent to the end, what deadouts free."""

import numpy as np

from planner.after.wants import wants_of
from planner.sizing.records import Arrival, Problem, Scenario, Use

BOX = "box-medium-10"


class Served:
    def __init__(self, **units):
        self.code = "s"
        self.served = [
            type("Line", (), {"use": use.replace("_", "/"), "units": n}) for use, n in units.items()
        ]


class Plan:
    def __init__(self, **units):
        self.scenarios = [Served(**units)]


def problem(*uses, arrivals=()):
    scenario = Scenario(code="s", probability=1, uses=uses, arrivals=arrivals)
    return Problem(periods=12, parts=(), locations=("shed", "creek"), scenarios=(scenario,))


def use(code, first, last, **more):
    return Use(
        code=code, location="creek", first=first, last=last, units=9, value=1, **{"keeps": {BOX: 1}, **more}
    )


def wants(made, plan):
    return wants_of(made, plan, extract_weeks=2, hauled={BOX, "comb"})


def test_a_super_leaves_its_yard_when_pulled_two_weeks_before_it_is_extracted():
    made = problem(use("super/creek", 2, 7))
    found = wants(made, Plan(super_creek=5))
    assert found.kept["creek", BOX].tolist() == [[0, 0, 5, 5, 5, 5, 0, 0, 0, 0, 0, 0]]
    assert found.pulled["creek", BOX].tolist() == [[0, 0, 0, 0, 0, 0, 5, 0, 0, 0, 0, 0]]


def test_a_super_left_on_to_the_end_is_one_stay():
    early, longer = use("super/creek", 2, 5), use("left-on/creek", 6, 9, needs_use="super/creek")
    found = wants(problem(early, longer), Plan(super_creek=5, **{"left-on_creek": 3}))
    assert found.kept["creek", BOX].tolist() == [[0, 0, 5, 5, 3, 3, 3, 3, 0, 0, 0, 0]]
    assert found.pulled["creek", BOX].sum() == 5


def test_what_is_spent_is_wanted_to_the_end_and_what_is_not_gear_never():
    made = problem(use("nuc/creek", 3, 4, keeps={}, spends={"comb": 5, "token": 1}))
    found = wants(made, Plan(nuc_creek=2))
    assert found.kept["creek", "comb"].tolist() == [[0, 0, 0] + [10] * 9]
    assert list(found.kept) == [("creek", "comb")]


def test_colonies_lost_free_their_gear_at_their_yard():
    made = problem(arrivals=(Arrival(part=BOX, location="creek", period=4, quantity=3),))
    assert wants(made, Plan()).found["creek", BOX].tolist() == [[0] * 4 + [3] * 8]


def test_a_use_the_plan_leaves_out_wants_nothing_and_would_still_take_a_piece():
    found = wants(problem(use("super/creek", 2, 7)), Plan())
    assert found.kept == {} and np.isclose(found.weights.sum(), 1)
    assert found.asked["creek", BOX].tolist() == [[0, 0, 9, 9, 9, 9, 0, 0, 0, 0, 0, 0]]
