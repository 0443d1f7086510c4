"""Why an order differs: each cause told with its old and new figure."""

from dataclasses import replace
from decimal import Decimal

from planner.comparing import Told
from planner.comparing.causes import causes_between
from tests.planner import made

BOOKS = {
    "day": "2027-01-15",
    "colonies": 67,
    "winter_ahead": True,
    "survival_share": 0.72,
    "splits_made": 0,
    "nucs_sold": 0,
    "dead": [["2026-12-01", 3]],
    "owned": {"box-medium-10": 200, "sugar": 50},
    "on_order": {"frame-medium": 200},
    "prices": {"nf-medium": [[1, "70.00"]], "old": [[1, "5.00"]]},
    "offers": {"nf-medium": "Medium box, flat", "old": "Old offer"},
    "parts": {"box-medium-10": "medium box", "frame-medium": "medium frame", "sugar": "sugar"},
}


def causes(report=None, **changed):
    before = Told(name="run 3", report=made.make_report(), books=BOOKS)
    now = Told(name="run 4", report=report or made.make_report(), books={**BOOKS, **changed})
    return " ".join(causes_between(before, now))


def test_a_winter_that_is_past_is_counted_against_what_was_expected():
    told = causes(
        day="2027-04-20", winter_ahead=False, colonies=55, dead=[["2026-12-01", 3], ["2027-03-20", 12]]
    )
    assert "The winter is counted: 55 of 67 colonies came through, where 48 were expected." in told
    assert "55 colonies live, 67 before." in told


def test_one_split_alone_counts():
    assert "1 split was made since and counts." in causes(day="2027-06-01", splits_made=1)


def test_losses_splits_and_sales_since_are_told():
    told = causes(day="2027-06-01", dead=[["2027-05-02", 1]], splits_made=9, nucs_sold=1, colonies=74)
    assert "1 colony died since." in told
    assert "9 splits were made since and count." in told
    assert "1 nuc was sold since." in told


def test_an_order_that_came_is_told_and_not_taken_for_gear_found():
    told = causes(owned={"box-medium-10": 204, "sugar": 40, "frame-medium": 200}, on_order={})
    assert "No longer on the way, received or closed: 200 × medium frame." in told
    assert "More in the books than before: 4 × medium box." in told
    assert "Fewer in the books than before: 10 × sugar." in told


def test_what_is_newly_on_the_way_is_said_not_to_be_bought_again():
    told = causes(on_order={"frame-medium": 300})
    assert "Newly on the way, and not bought again: 100 × medium frame." in told


def test_prices_changed_gone_and_new_are_named_with_both_figures():
    prices = {"nf-medium": [[1, "77.00"], [10, "70.00"]], "new": [[1, "3.00"]]}
    told = causes(prices=prices, offers={"nf-medium": "Medium box, flat", "new": "New offer"})
    assert "Price of Medium box, flat: 77.00 / 70.00 from 10, 70.00 before." in told
    assert "No longer offered: Old offer." in told and "Newly offered: New offer." in told


def test_an_answer_changed_is_told_with_its_question():
    row = replace(made.ASSUMED, value="10")
    told = causes(report=replace(made.make_report(), assumptions=(row,)))
    assert told == "How often do you get round each yard? 10 days, 14 before."


def test_a_budget_lifted_is_told():
    assert "The budget is without limit, " in causes(report=replace(made.make_report(), budget=None))
    assert "$99.50" in causes(report=replace(made.make_report(), budget=Decimal("99.50")))


def test_runs_that_kept_no_books_are_compared_by_answers_and_budget_alone():
    before = Told(name="run 3", report=made.make_report())
    now = Told(name="run 4", report=made.make_report(), books=BOOKS)
    assert tuple(causes_between(before, now)) == ()
