"""The master: cuts, bounds in fractions and in whole numbers, what an order can reach."""

import numpy as np
import pytest

from planner.programme.here_and_now import order_part
from planner.solution.two_phase.master import Master
from tests.planner.small_problems import small_problem


def master_of(**changes):
    """One group earning 25 a box up to 3.5 boxes."""
    master = Master(order_part(small_problem(**changes)), 1)
    master.cuts([(0.0, np.array([25.0]))], np.array([0.0]))
    master.cuts([(87.5, np.array([0.0]))], np.array([3.5]))
    return master


def test_fractions_bound_whole_numbers():
    master = master_of()
    loose, whole = master.relaxed(10), master.in_whole_numbers(1e-6, 10)
    assert loose.bound == pytest.approx(87.5 - 35)
    assert master.packs(loose.columns).tolist() == [3.5]
    assert (whole.bound, whole.columns.tolist()) == (pytest.approx(47.5), [4])
    assert master.cost(whole.columns) == -40


def test_earnings_are_held_at_nothing_before_the_first_cut():
    master = Master(order_part(small_problem()), 1)
    found = master.relaxed(10)
    assert (found.bound, found.columns.tolist()) == (0, [0])


def test_a_limit_and_a_contradiction_of_limits():
    master = master_of()
    master.needed(np.array([1.0]), 2.0)
    master.needed(np.array([-1.0]), -2.0)
    assert master.relaxed(10).columns.tolist() == [2]
    master.needed(np.array([1.0]), 3.0)
    assert master.relaxed(10).infeasible


def test_bounds_are_narrowed_and_given_back():
    master = master_of()
    whole = master.near(1e-6, 10, np.array([1.0]), np.array([2.0]))
    assert whole.columns.tolist() == [2]
    master.hold(0, 1, 1)
    assert master.relaxed(10).columns.tolist() == [1]
    master.free(0)
    assert master.relaxed(10).columns.tolist() == [3.5]
    master.narrow(0, 0, 2)
    master.free(0)
    assert master.relaxed(10).columns.tolist() == [2]


def test_what_orders_of_a_worth_can_reach():
    master = master_of()
    reached = master.reach([0], 30.0, 10)
    assert reached == {0: (pytest.approx(2), pytest.approx(min(5.75, master.highest[0])))}
    assert master.relaxed(10).bound == pytest.approx(52.5)


def test_a_choice_held_tells_its_bound():
    master = Master(order_part(small_problem(supplier={"order_fee": 20})), 1)
    master.cut(0, 0.0, np.array([25.0]), np.array([0.0]))
    master.cut(0, 100.0, np.array([0.0]), np.array([4.0]))
    choice = next(iter(master.choices))
    assert master.best_worth_holding(choice, 0.0, 10) == pytest.approx(0)
    assert master.best_worth_holding(choice, 1.0, 10) == pytest.approx(40)
    assert master.relaxed(10).bound >= 40


def test_the_price_of_the_budget():
    master = master_of(budget=20, offer={"whole": False})
    master.relaxed(10)
    assert master.price("budget") == 0  # the cap of two packs has it
    master.uncap()
    master.relaxed(10)
    assert master.price("budget") == pytest.approx(1.5)


def test_bounds_are_told_while_it_looks():
    told = []
    master_of().in_whole_numbers(1e-6, 10, tell=told.append)
    assert all(bound >= 47.5 - 1e-6 for bound in told)


def test_one_cut_for_all_groups_bounds_no_less_than_a_cut_each():
    master = Master(order_part(small_problem(use={"units": 9})), 2)
    ends = master.lowest, master.highest
    for packs, cuts in (
        (0.0, [(0.0, np.array([10.0])), (0.0, np.array([15.0]))]),
        (4.0, [(40.0, np.array([0.0])), (60.0, np.array([9.0]))]),
    ):
        master.cuts(cuts, np.array([packs]))
    apart, together = master.in_whole_numbers(1e-9, 10), master.near(1e-9, 10, *ends)
    assert together.bound >= apart.bound - 1e-9
    assert apart.bound == pytest.approx(40 + 60 - 40)


def test_a_limit_of_must_uses_holds_in_the_quick_look_too():
    master = master_of()
    master.needed(np.array([1.0]), 5.0)
    assert master.near(1e-6, 10, master.lowest, np.array([6.0])).columns.tolist() == [5]
    assert master.near(1e-6, 10, master.lowest, np.array([4.0])).infeasible


def test_an_order_has_its_columns_fee_and_price_step_included():
    steps = [{"from_packs": 1, "price": 10}, {"from_packs": 4, "price": 8}]
    changes = {"supplier": {"order_fee": 7}, "offer": {"prices": steps, "max_packs": 6}}
    for master in (master_of(**changes), Master(order_part(small_problem(**changes)), 1)):
        columns = master.columns_of({("boxes", 0): 4})
        assert (master.cost(columns), master.order(columns)) == (pytest.approx(-39), {("boxes", 0): 4})
        assert master.columns_of({("boxes", 0): 7}) is None


def test_an_order_of_what_nobody_offers_has_no_columns():
    assert master_of().columns_of({("lid", 0): 2}) is None
    assert master_of().columns_of({("lid", 0): 0}).tolist() == [0]
