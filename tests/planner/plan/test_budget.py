"""What other budgets would do: figures over the smallest budget, a curve that never falls, sentences that follow."""

import itertools
from dataclasses import replace
from decimal import Decimal

from hypothesis import given
from hypothesis import strategies as st

from planner.plan.budget import budget_section, drops_said
from planner.solution.nearby.records import LessMoney
from tests.planner.plan import small
from tests.planner.plan.neighbours import moved, nearby, point
from tests.planner.plan.test_moves import facts, sums


def section(problem=None, **changed):
    told = facts()
    if problem is not None:
        told = replace(told, problem=problem)
    return budget_section(nearby(**changed), told)


def test_a_run_that_did_not_ask_has_no_section():
    assert budget_section(None, facts()) is None


def test_what_is_earned_is_told_over_the_smallest_budget():
    made = section()
    assert len(made.points) == 12
    assert [made.points[at].gain for at in (0, 5, 11)] == [Decimal(0), Decimal(600), Decimal(616)]
    assert made.points[5].chosen and sum(point.chosen for point in made.points) == 1
    assert made.at_knee.budget == Decimal(150)
    assert made.points[5].most == Decimal(601)


def test_the_next_hundred_is_told_with_what_it_earns():
    assert section().sentences[0] == ("The next $100 would earn $15 a season on top of what it costs.")
    assert section(next_earns=4.2).sentences[0].startswith("The next $100 would earn $4.20 a season")


def test_a_hundred_that_earns_nothing_is_told_apart_from_money_that_comes_in_bigger_pieces():
    assert section(next_earns=0.0).sentences[0] == (
        "The next $100 alone would earn nothing; $300 more would earn about $16 a season."
    )
    flat = tuple(point(50.0 * at, 100.0) for at in range(12))
    assert section(next_earns=0.1, points=flat).sentences[0] == (
        "The next $100 would earn nothing: what is worth its money is in the order."
    )


def test_the_next_hundred_earns_no_less_than_the_best_pack_more_it_pays_for():
    """The sugar past the budget by 30 earns 6; the boxes past it by 140 are too dear for a hundred."""
    moves = (moved(1, worth=6.0, over_budget=30.0), moved(1, worth=90.0, over_budget=140.0))
    assert section(next_earns=0.0, moves=moves).next_earns == Decimal(6)
    assert section(next_earns=9.0, moves=moves).next_earns == Decimal(9)
    assert section(next_earns=0.0, moves=(moved(1, worth=6.0),)).next_earns == 0  # no more money is needed
    assert section(next_earns=0.0, moves=(moved(-1, worth=6.0, over_budget=3.0),)).next_earns == 0


def test_budgets_without_a_good_order_are_left_out_and_named():
    """Between nothing and the order's own 250 only nothing was found, though 600 could be earned."""
    points = tuple(
        point(50.0 * at, -400.0 if at < 5 else 200.0, poor=0 < at < 5, settled=not 0 < at < 5)
        for at in range(12)
    )
    made = section(points=points, knee=None, less=None, next_earns=0.0, moves=())
    assert [each.budget for each in made.points] == [0, *range(250, 600, 50)]
    assert [each.gain for each in made.points] == [0, *[600] * 7]
    assert made.not_told == (
        "Time ran out before good orders were found for budgets of $50 to $200: they are left out. Allow more seconds."
    )


def test_gains_are_told_over_the_smallest_budget_that_has_a_good_order():
    points = tuple(point(50.0 * at, 10.0 * at, poor=at == 0) for at in range(12))
    made = section(points=points, knee=None, less=None)
    assert (made.points[0].budget, made.points[0].gain, made.points[-1].gain) == (50, 0, 100)


def test_what_is_not_proven_to_earn_nothing_is_not_said_to():
    worths = (-100.0, *[100.0] * 11)
    open_ended = tuple(point(50.0 * at, worth, bound=worth + 40) for at, worth in enumerate(worths))
    said = section(next_earns=0.0, points=open_ended).sentences[0]
    assert said == "Nothing was found that the next $100 would earn."


def test_what_is_dropped_comes_before_what_is_taken_instead():
    less = LessMoney(budget=50.0, lost=1.0, changes=(("north-sugar", 0, 1, 2), ("north-box", 0, 2, 0)))
    assert [change.is_less for change in section(less=less).less.changes] == [True, False]


def test_the_bend_is_told_with_what_a_hundred_earns_on_both_its_sides():
    """Up to 150: 520 over 150; beyond: 96 over 400."""
    assert section().sentences[1] == (
        "The curve bends at $150: up to there $100 more earn about $347 a season, beyond it about $24."
    )
    assert not any("bends" in said for said in section(knee=None).sentences)


def test_a_curve_cut_short_still_has_this_order_at_its_budget():
    """The plan's own worth of 200 stands at its budget of 250, over the worth of -400 at none."""
    cut = nearby().points[:4]
    made = section(points=cut, knee=1, next_budget=None, next_earns=None, less=None, not_told="Time ran out.")
    assert [point.budget for point in made.points] == [0, 50, 100, 150, 250]
    assert made.points[-1].chosen and made.points[-1].gain == Decimal(600)
    assert made.points[1].knee
    assert section(points=(), knee=None).points == ()


def test_less_money_names_what_to_drop_and_what_that_loses():
    made = section()
    assert (made.less.less, made.less.lost) == (Decimal(200), Decimal(420))
    assert drops_said(made.less) == (
        "Medium box, in pieces, pack of 5: drop all 2",
        "Sugar, 50 lb bag: take 1 pack more",
    )
    assert made.less.said == (
        "With $200 less to spend, drop from 1 line (and take more of 1) and lose $420 a season."
    )


def test_less_money_that_changes_nothing_says_so():
    less = LessMoney(budget=240.0, lost=0.0, changes=())
    assert section(less=less).less.said == "With $10 less to spend the order would stay as it is."


def test_without_a_budget_the_order_stands_at_what_it_spends():
    made = section(problem=small.problem(budget=None), next_budget=None, next_earns=None)
    assert made.mark == Decimal("200.00")
    assert not any(point.chosen for point in made.points)
    assert made.sentences[0] == "No budget was set: all that is worth its money is in the order."


def test_what_the_time_did_not_allow_is_told():
    made = section(points=(), knee=None, less=None, next_earns=None, not_told="The time was up.")
    assert (made.points, made.less, made.not_told) == ((), None, "The time was up.")
    assert made.sentences == ()


@given(st.lists(st.floats(-5000, 5000), min_size=2, max_size=12), st.floats(0, 900))
def test_a_bigger_budget_never_earns_less_and_no_point_is_above_what_is_proven(worths, earns):
    points = tuple(point(100.0 * at, worth) for at, worth in enumerate(worths))
    made = section(points=points, knee=None, next_earns=earns)
    assert all(left.gain <= right.gain for left, right in itertools.pairwise(made.points))
    assert all(each.gain <= each.most for each in made.points)
    assert made.points[0].gain == 0
    said = made.sentences[0]
    assert ("would earn nothing" in said) == (made.next_earns <= Decimal("0.50"))
    if made.next_earns > Decimal("0.50"):
        assert abs(sums(said)[1] - made.next_earns) <= Decimal("0.50")
