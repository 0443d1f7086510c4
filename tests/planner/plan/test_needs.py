"""What the seasons ask for and get, by hand (see small.py)."""

import numpy as np

from planner.plan.needs import Needs, quantile
from planner.sizing.reading import problem_of
from tests.planner.plan import small

GEAR = (small.BOX, small.FLAT, "sugar", "guard-10")


def needs(problem=None, plan=None):
    return Needs(problem or small.problem(), plan or small.plan(), gear=GEAR)


def test_a_piece_kept_counts_while_it_is_kept_and_one_spent_from_then_on():
    asked = needs().asked({small.BOX: 1.0})
    assert asked[:, 24].tolist() == [8, 12, 12, 12]
    assert asked[:, 26].tolist() == [8, 12, 16, 20]
    assert not asked[:, 31].any()
    assert needs().asked({"sugar": 1.0})[:, 51].tolist() == [30, 40, 50, 60]


def test_yards_add_up_to_the_whole():
    yards = needs().asked_by_yard({small.BOX: 1.0})
    assert set(yards) == {"creek", "hill"}
    assert np.allclose(sum(yards.values()), needs().asked({small.BOX: 1.0}))


def test_what_a_plan_leaves_out_is_asked_for_but_not_served():
    scenarios = [small.solved(number, wanted) for number, wanted in enumerate(small.WANTED)]
    scenarios[3]["served"][1]["units"] = 3
    left = needs(plan=small.plan(scenarios=scenarios))
    assert left.asked({small.BOX: 1.0})[3, 26] == 20
    assert left.served({small.BOX: 1.0})[3, 26] == 15


def test_alternatives_that_share_a_limit_ask_only_for_what_is_chosen():
    """Pull once or twice: both keep the token, only the one served is wanted; so of uses that bring nothing."""
    data = small.problem_data()
    data["parts"].append({"code": "choice"})
    twice = small.use("super/creek/twice", "creek", 24, 27, 8, 25, {small.BOX: 1, "choice": 1})
    poor = small.use("super/creek/poor", "creek", 24, 27, 5, -1, {small.BOX: 1})
    for scenario in data["scenarios"]:
        scenario["uses"] += [twice, poor]
    assert needs(problem=problem_of(data)).asked({small.BOX: 1.0})[:, 24].tolist() == [8, 12, 12, 12]


def test_deadouts_give_back_from_their_week_on():
    arrived = needs().arrived({small.BOX: 1.0})
    assert arrived[2, 16] == 0 and arrived[2, 17] == 7 and arrived[0].sum() == 0


def test_what_begins_in_a_week_is_told_by_yard():
    begins = needs().begins(small.BOX)
    assert np.flatnonzero(begins[3]).tolist() == [24, 26] and np.flatnonzero(begins[0]).tolist() == [24]
    assert needs().starting(small.BOX, 3, 26) == {"hill": 8}
    assert needs().starting(small.BOX, 3, 25) == {}


def test_kinds_of_use_are_ordered_by_pieces():
    assert needs().kinds({small.BOX: 1.0, "sugar": 1.0}) == ("feed", "super")


def test_a_quantile_is_a_value_that_was_seen():
    values, even = np.array([3.0, 1.0, 2.0, 4.0]), np.full(4, 0.25)
    assert [quantile(values, even, share) for share in (0.1, 0.25, 0.5, 0.9, 1.0)] == [1, 1, 2, 4, 4]
