"""One cell read as what its column holds: accepted where there is one way to read it, else refused in words."""

import datetime as dt
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inventory.sheets.cells import Choice, Code, Money, MoneyCode, Number, Text, Week, Whole, YesNo
from inventory.sheets.faults import Misread
from inventory.sheets.layout import RULES, STRENGTHS


def refused(holds, value):
    with pytest.raises(Misread) as refusal:
        holds.read(value)
    assert refusal.value.remedy
    return refusal.value.what


@pytest.mark.parametrize(
    "value, number", [(12, 12), (12.0, 12), (" 12 ", 12), ("1,234", 1234), ("12.0", 12), ("１２", 12), (0, 0)]
)
def test_counts_are_read_where_they_are_whole(value, number):
    assert Whole().read(value) == number


@pytest.mark.parametrize(
    "value, what",
    [
        ("a dozen", "'a dozen' is text, not a number"),
        ("12 boxes", "'12 boxes' is text, not a number"),
        (-3, "-3 is negative"),
        ("-3", "-3 is negative"),
        (2.5, "2.5 is not a whole number"),
        ("2,5", "2,5 is not a whole number"),
        (True, "holds yes or no where a number belongs"),
        (dt.datetime.combine(dt.date(2026, 3, 4), dt.time()), "holds 2026-03-04, not a number"),
        (2_000_000, "2000000 is out of range"),
        (float("nan"), "is not a finite number"),
        (float("inf"), "is not a finite number"),
        ("1e3", "'1e3' is text, not a number"),
    ],
)
def test_what_is_no_count_is_refused(value, what):
    assert refused(Whole(), value) == what


def test_a_lowest_above_zero_is_kept():
    assert refused(Whole(lowest=1), 0) == "0 is out of range"
    assert refused(Whole(lowest=1), -1) == "-1 is negative"


@pytest.mark.parametrize(
    "value, number",
    [
        *(("1,234.5", "1234.5"), (" 12 ", "12"), (12.3, "12.3"), (".5", "0.5"), (3, "3"), (0.1 + 0.2, "0.3")),
        *(("69,5", "69.5"), ("1.234,5", "1234.5"), ("1,50", "1.5"), ("12.345,0", "12345")),
    ],
)
def test_numbers_are_read_without_the_noise_of_binary_fractions(value, number):
    assert Number(places=1).read(value) == Decimal(number)


@pytest.mark.parametrize(
    "value, what",
    [
        ("1.23,5", "'1.23,5' can be read in two ways"),
        ("1,2,3", "'1,2,3' can be read in two ways"),
        ("1 234", "'1 234' is text, not a number"),
        ("1,2345", "'1,2345' can be read in two ways"),
        ("1,234,5", "'1,234,5' can be read in two ways"),
    ],
)
def test_numbers_with_commas_that_are_neither_groups_nor_a_decimal_are_refused(value, what):
    assert refused(Number(places=1), value) == what


def test_a_group_of_three_alone_is_refused_where_it_could_be_a_decimal():
    assert refused(Number(places=3), "1,234") == "'1,234' can be read in two ways"


def test_more_decimals_than_are_kept_are_refused_not_rounded():
    assert refused(Number(places=1), 12.34) == "12.34 has more than 1 decimal"
    assert refused(Money(), 9.995) == "9.995 has more than 2 decimals"


@pytest.mark.parametrize("value, cents", [(9.95, 995), ("$1,200.00", 120000), ("0.07", 7), (19.99, 1999)])
def test_money_is_exact_to_the_cent(value, cents):
    assert Money().read(value) * 100 == cents


@given(st.integers(min_value=0, max_value=2_000_000_000))
def test_every_amount_of_cents_survives_the_spreadsheets_float(cents):
    assert Money().read(float(Decimal(cents) / 100)) == Decimal(cents) / 100


def test_money_out_of_range_or_negative_is_refused():
    assert refused(Money(), -1) == "-1 is negative"
    assert refused(Money(), 10**30) == f"{10**30} is out of range"
    assert refused(Number(), "9" * 60).endswith("is out of range")


def test_text_keeps_its_lines_and_loses_stray_spaces():
    assert Text(longest=200).read("  Mill   Field \r\n second  gate ") == "Mill Field\nsecond gate"


@pytest.mark.parametrize("value, text", [(12, "12"), (12.0, "12"), ("=1+1", "=1+1"), ("'x", "'x")])
def test_text_typed_as_a_number_or_like_a_formula_stays_text(value, text):
    assert Text().read(value) == text


def test_text_that_the_spreadsheet_made_a_date_is_refused():
    assert (
        refused(Text(), dt.datetime.combine(dt.date(2026, 3, 4), dt.time()))
        == "the spreadsheet turned this into a date (2026-03-04)"
    )


def test_text_too_long_or_unprintable_or_a_yes_is_refused():
    assert refused(Text(longest=5), "abcdef") == "is 6 signs long"
    assert refused(Text(), "a\x07b") == "holds signs that cannot be printed"
    assert refused(Text(), True) == "holds yes or no where words belong"


@pytest.mark.parametrize("value", ["Mill Field", "mill/field", "-mill", "x" * 31, "müll"])
def test_codes_are_small_letters_digits_and_hyphens(value):
    assert refused(Code(), value) == f"{value!r} is no code"


def test_a_code_in_capitals_is_taken_as_small():
    assert Code().read(" MILL-2 ") == "mill-2"


def test_money_codes_have_three_letters():
    assert MoneyCode().read("usd") == "USD"
    assert refused(MoneyCode(), "dollars") == "'dollars' is no money code"


@pytest.mark.parametrize(
    "value, week", [(23, 23), ("23", 23), (dt.datetime.combine(dt.date(2026, 6, 3), dt.time()), 23)]
)
def test_a_week_is_a_number_or_a_day_in_it(value, week):
    assert Week().read(value) == week


@pytest.mark.parametrize(
    "value, what",
    [(0, "0 is out of range"), (54, "54 is out of range"), ("June", "'June' is text, not a number")],
)
def test_weeks_outside_the_year_are_refused(value, what):
    assert refused(Week(), value) == what


def test_choices_are_read_in_any_case_by_pick_or_by_what_they_stand_for():
    assert STRENGTHS.read(" Strong ") == "strong"
    assert RULES.read("only further packs") == RULES.read("incremental") == "incremental"
    assert RULES.write("incremental") == "only further packs"


def test_an_unknown_choice_names_all_and_suggests_the_nearest():
    with pytest.raises(Misread) as refusal:
        STRENGTHS.read("strnog")
    assert refusal.value.what == "'strnog' is none of strong, fair, weak"
    assert refusal.value.remedy == "Did you mean 'strong'? Write that"
    assert refused(Choice(words=(("a", "a"),)), 7) == "'7' is none of a"


@pytest.mark.parametrize(
    "value, meant", [("Yes", True), ("y", True), (True, True), ("no", False), (False, False)]
)
def test_yes_and_no(value, meant):
    assert YesNo().read(value) is meant


def test_neither_yes_nor_no_is_refused():
    assert refused(YesNo(), "perhaps") == "'perhaps' is neither yes nor no"
