"""Which budgets a curve is told at."""

from planner.solution.nearby.budgets import round_budgets


def test_twelve_round_budgets_run_from_nothing_past_what_is_of_use():
    found = round_budgets(least=0, most=8000)
    assert found == [1000 * at for at in range(12)]


def test_the_problems_own_budget_takes_the_place_of_the_one_next_to_it():
    found = round_budgets(least=0, most=8000, own=4300)
    assert (len(found), 4300 in found, 4000 in found) == (12, True, False)
    assert found == sorted(found)


def test_no_budget_is_less_than_what_every_must_use_takes():
    found = round_budgets(least=730, most=5000, own=900)
    assert found[0] >= 730
    assert (900 in found, len(found)) == (True, 12)


def test_an_own_budget_past_all_use_is_the_last_or_near_it():
    found = round_budgets(least=0, most=100, own=5000)
    assert 5000 in found
    assert found[-1] >= 5000


def test_where_nothing_is_worth_buying_there_are_still_rising_budgets():
    found = round_budgets(least=0, most=0)
    assert (len(set(found)), found) == (12, sorted(found))
