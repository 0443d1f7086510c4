"""A day in three styles; what can be read in two ways is refused."""

import datetime as dt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inventory.sheets.days import day_of
from inventory.sheets.faults import Misread

MARCH_4 = dt.date(2026, 3, 4)


@pytest.mark.parametrize(
    "written",
    [
        dt.datetime.combine(dt.date(2026, 3, 4), dt.time()),
        dt.date(2026, 3, 4),
        "2026-03-04",
        " 2026-3-4 ",
        "2026-03-04 00:00:00",
        "2026-03-04T00:00:00",
        "4 March 2026",
        "4 mar 2026",
        "4th of March 2026",
        "March 4, 2026",
        "Mar. 4 2026",
        "4-Mar-2026",
        "４ March 2026",
    ],
)
def test_the_three_styles_mean_the_same_day(written):
    assert day_of(written) == MARCH_4


@pytest.mark.parametrize("written", ["25/12/2026", "12/25/2026", "25.12.2026", "12-25-2026"])
def test_figures_are_taken_where_only_one_reading_is_a_day(written):
    assert day_of(written) == dt.date(2026, 12, 25)


def test_the_same_figure_twice_is_one_day_either_way():
    assert day_of("4/4/2026") == dt.date(2026, 4, 4)


def test_a_day_that_can_be_read_in_two_ways_is_refused_with_both():
    with pytest.raises(Misread) as refusal:
        day_of("03/04/2026")
    assert refusal.value.what == "'03/04/2026' may mean 3 April or 4 March"
    assert "2026-03-04" in refusal.value.remedy


@pytest.mark.parametrize(
    "written",
    [
        "2026-02-30",
        "30 February 2026",
        "31/31/2026",
        "4 Ma 2026",
        "4 Juli 2026",
        "04/03/26",
        "spring",
        "2026",
        46085,
        46085.5,
        True,
    ],
)
def test_what_is_no_day_is_refused_and_the_remedy_shows_how(written):
    with pytest.raises(Misread) as refusal:
        day_of(written)
    assert "2026-03-04" in refusal.value.remedy


@pytest.mark.parametrize("month, written", [(9, "1 Sept 2026"), (6, "1 Jun 2026"), (5, "May 1 2026")])
def test_usual_short_months_are_known(month, written):
    assert day_of(written) == dt.date(2026, month, 1)


@given(st.dates(min_value=dt.date(1900, 1, 1), max_value=dt.date(2199, 12, 31)))
def test_every_day_is_read_back_from_each_style(day):
    written = [day.isoformat(), f"{day.day} {day:%B} {day.year}", f"{day:%b} {day.day}, {day.year}"]
    assert [day_of(text) for text in written] == [day] * 3
