"""Cells: whatever stands in the books is the same after writing and reading, and no spreadsheet runs it."""

import datetime as dt
from decimal import Decimal

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from apiary.models import Colony, ColonyEvent, Keeper, Yard
from inventory.models import MothCare, Movement, Part
from planner.models import Run
from planner.plain_data.cells import GUARDED, codec_of, document, guarded, unguarded
from planner.plain_data.faults import CellFault

ZONES = [dt.UTC, dt.timezone(dt.timedelta(hours=-7)), dt.timezone(dt.timedelta(hours=5, minutes=45))]
at_random = settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
TEXT = st.text(st.characters(exclude_categories=["Cs"], exclude_characters="\0"), max_size=60)
JSON = st.recursive(
    st.none()
    | st.booleans()
    | st.integers(-(2**53), 2**53)
    | st.floats(allow_nan=False, allow_infinity=False)
    | TEXT,
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(TEXT, inner, max_size=4),
    max_leaves=12,
)


def codec(model, name):
    return codec_of(model._meta.get_field(name))


def fault_of(model, name, text):
    with pytest.raises(CellFault) as caught:
        codec(model, name).read(text)
    return caught.value


@at_random
@given(TEXT)
def test_any_text_comes_back_as_it_was_and_never_begins_like_a_formula(text):
    cell = guarded(text)
    assert unguarded(cell) == text
    assert not cell.startswith(tuple(sign for sign in GUARDED if sign != "'"))


@pytest.mark.parametrize(
    "text", ["=1+1", "+1", "-3", "@SUM(A1)", "\t=1", "\r=1", "＝1+1", "'quoted", "''", "'"]
)
def test_what_a_spreadsheet_would_run_gets_one_apostrophe(text):
    """The signs after OWASP's page on CSV injection (tab, carriage return, = + - @), from memory."""
    note = codec(ColonyEvent, "note")
    assert note.write(text) == f"'{text}"
    assert note.read(note.write(text)) == text


@at_random
@given(JSON.filter(lambda value: value is not None))
def test_any_document_comes_back_as_it_was(value):
    answers = codec(Run, "answers")
    assert answers.read(answers.write(value)) == value


@at_random
@given(st.datetimes(timezones=st.sampled_from(ZONES)))
def test_any_moment_comes_back_to_the_microsecond_whatever_its_zone(moment):
    asked = codec(Run, "asked_at")
    try:
        text = asked.write(moment)
    except OverflowError:  # the first or last hours of the calendar
        return
    assert asked.read(text) == moment
    assert text.endswith("+00:00")


@at_random
@given(st.dates())
def test_any_day_comes_back(day):
    started = codec(Colony, "started_on")
    assert started.read(started.write(day)) == day


@at_random
@given(st.decimals(-99999, 99999, places=1, allow_nan=False))
def test_any_decimal_comes_back_with_its_digits(number):
    miles = codec(Yard, "miles")
    assert miles.read(miles.write(number)) == number
    assert "E" not in miles.write(number)


@at_random
@given(st.floats(allow_nan=False))
def test_any_float_comes_back_exactly(number):
    gap = codec(Run, "gap")
    assert gap.read(gap.write(number)) == number


def test_a_value_not_told_is_an_empty_cell():
    for model, name in (
        (Colony, "ended_on"),
        (Colony, "mother"),
        (Run, "plan"),
        (MothCare, "tenths_celsius"),
    ):
        assert codec(model, name).write(None) == ""
        assert codec(model, name).read("") is None


def test_equal_documents_have_equal_text_whatever_the_order_and_the_sign_of_zero():
    assert document({"b": [0.0], "a": 1}) == document({"a": 1, "b": [-0.0]}) == '{"a": 1, "b": [0.0]}'


@pytest.mark.parametrize(
    ("model", "name", "text", "what", "remedy"),
    [
        (Movement, "quantity", "three", "no whole number", "as 12"),
        (Movement, "quantity", "3.0", "no whole number", "as 12"),
        (Movement, "quantity", "", "nothing stands there", "a whole number"),
        (Movement, "quantity", "-1", "cannot stand there", "greater than or equal to 0"),
        (Movement, "quantity", "٣", "no whole number", "as 12"),
        (Movement, "condition", "broken", "no word of this column", "held back, sound, to mend"),
        (Movement, "found", "TRUE", "neither yes nor no", "yes or no"),
        (Movement, "day", "30.11.2026", "no day", "2026-11-30"),
        (Movement, "day", "2026-02-30", "no day", "2026-11-30"),
        (Movement, "day", "20261130", "no day", "2026-11-30"),
        (Run, "asked_at", "2026-11-30T19:05:00", "no time with its zone", "+00:00"),
        (Run, "asked_at", "yesterday", "no time with its zone", "+00:00"),
        (Run, "asked_at", "0001-01-01T00:00:00+14:00", "outside the calendar", "+00:00"),
        (Run, "gap", "nan", "no number", "0.001"),
        (Run, "gap", " 1", "no number", "0.001"),
        (Run, "answers", "{splits: 12}", "no JSON", '{"splits": 12}'),
        (Run, "answers", "NaN", "no JSON", '{"splits": 12}'),
        (Run, "answers", "", "nothing stands there", "JSON"),
        (Yard, "miles", "12,5", "no number", "12.50"),
        (Yard, "miles", "12.55", "cannot stand there", "decimal place"),
        (Yard, "name", "x" * 81, "cannot stand there", "80 characters"),
        (Yard, "name", "a\0b", "zero character", "take it out"),
        (Keeper, "count_every_months", "0", "cannot stand there", "1"),
        (Part, "kind", "", "no word of this column", "one of"),
    ],
)
def test_each_wrong_cell_says_what_is_wrong_and_what_would_be_right(model, name, text, what, remedy):
    fault = fault_of(model, name, text)
    assert what in fault.what
    assert remedy in fault.remedy


def test_the_moment_is_read_in_any_zone():
    moment = dt.datetime(2026, 11, 30, 18, 5, tzinfo=dt.UTC)
    assert codec(Run, "asked_at").read("2026-11-30T19:05:00+01:00") == moment
    assert codec(Run, "asked_at").read("2026-11-30T18:05:00Z") == moment


def test_decimals_are_written_in_full():
    assert codec(Yard, "miles").write(Decimal("1E+2")) == "100"
