"""How days, sums, shares and lists are said."""

import datetime as dt
from decimal import Decimal

import pytest

from planner.plan.words import (
    amount,
    capital,
    cents,
    listed,
    of_100,
    part_of_month,
    percent,
    places,
    plural,
    seasons,
    sum_words,
)


@pytest.mark.parametrize(
    ("day", "words"),
    [(1, "early May"), (10, "early May"), (11, "mid May"), (20, "mid May"), (21, "late May")],
)
def test_a_month_has_three_parts(day, words):
    assert part_of_month(dt.date(2027, 5, day)) == words


def test_sums_carry_their_sign_or_their_code():
    assert sum_words(Decimal("1240.5"), "USD", cents_too=True) == "$1,240.50"
    assert sum_words(Decimal("-340"), "USD") == "−$340"
    assert sum_words(Decimal("12"), "SEK") == "12 SEK"
    assert sum_words(Decimal("-0.2"), "USD") == "$0"


def test_cents_round_half_up_and_take_floats_as_they_read():
    assert cents(2.375) == Decimal("2.38")
    assert cents(0.1 + 0.2) == Decimal("0.30")
    assert cents(Decimal("7.005")) == Decimal("7.01")


def test_a_share_is_never_rounded_to_never_or_always():
    assert (of_100(0), of_100(0.001), of_100(0.314), of_100(0.999), of_100(1.0)) == (0, 1, 31, 99, 100)
    assert seasons(1) == "in 1 season of 100"
    assert seasons(100) == "in every season"


def test_lists_end_in_and():
    assert [listed([]), listed(["a"]), listed("ab"), listed("abc")] == ["", "a", "a and b", "a, b and c"]


def test_many_yards_are_named_by_the_first_two():
    assert places([]) == ""
    assert places(["Creek", "Hill", "Mill"]) == " at Creek, Hill and Mill"
    assert places(["Creek", "Hill", "Mill", "Ford"]) == ", above all at Creek and Hill"


def test_units_are_counted_but_weights_stay():
    assert [amount(1500, "lb"), amount(2, "box"), amount(1, "box"), amount(60, "piece")] == [
        "1,500 lb",
        "2 boxes",
        "1 box",
        "60",
    ]
    assert [plural(word) for word in ("patty", "day", "box", "brush", "glass")] == [
        "patties",
        "days",
        "boxes",
        "brushes",
        "glass",
    ]


def test_percent_does_not_break_over_lines():
    assert percent(0.72) == "72\N{NO-BREAK SPACE}%"


def test_only_the_first_letter_is_made_large():
    assert (capital("this order"), capital("USD"), capital("")) == ("This order", "USD", "")
