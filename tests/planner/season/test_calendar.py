"""ISO weeks and visits in the 52 weeks ahead, from any day."""

import datetime as dt

from hypothesis import given
from hypothesis import strategies as st

from planner.season.assumptions import assumptions_of
from planner.season.calendar import (
    Circuit,
    circuit_of,
    day_of,
    due_period,
    is_ahead,
    iso_weeks,
    period_of,
    piece_of,
    summer_left,
    summers_end_first,
    turns_of,
    weeks_since,
)
from planner.season.operation import WindowFacts
from tests.planner.operations import DAY, operation

DAYS = st.dates(dt.date(2020, 1, 1), dt.date(2035, 12, 31))


def window(first, last):
    return WindowFacts(name="x", first_week=first, last_week=last, gain_lb=50, spread=0.3)


@given(DAYS, st.integers(1, 52))
def test_every_week_is_found_where_the_calendar_has_it(start, week):
    period = period_of(start, 52, week)
    found = iso_weeks(start, 52)[period]
    assert found == week or week not in iso_weeks(start, 52)
    middle = day_of(start, period) + dt.timedelta(days=3)
    assert middle.isocalendar().week == found


def test_a_fifty_third_week_counts_as_the_one_before_where_there_is_none():
    start = dt.date(2025, 1, 6)
    assert 53 not in iso_weeks(start, 52)
    assert period_of(start, 52, 53) == period_of(start, 52, 52)


@given(DAYS, st.integers(1, 52), st.integers(0, 20))
def test_a_flow_lies_inside_the_horizon(start, first, length):
    last = (first + length - 1) % 52 + 1
    piece = piece_of(start, 52, window(first, last))
    assert 0 <= piece.first <= piece.last <= 51
    assert piece.gone_weeks + piece.last - piece.first + 1 <= piece.of_weeks


def test_a_flow_over_the_new_year_wraps():
    piece = piece_of(dt.date(2025, 8, 4), 52, window(50, 4))
    assert piece.of_weeks == 7
    assert piece.last - piece.first == 6
    assert iso_weeks(dt.date(2025, 8, 4), 52)[piece.first] == 50


def test_a_flow_that_is_on_is_cut_to_what_remains():
    start = dt.date(2026, 6, 15)
    assert iso_weeks(start, 52)[0] == 25
    piece = piece_of(start, 52, window(23, 29))
    assert (piece.first, piece.last, piece.gone_weeks, piece.of_weeks) == (0, 4, 2, 7)


def test_visits_before_and_after():
    circuit = Circuit(step=2, weeks=52)
    assert (circuit.before(27), circuit.after(27), circuit.before(26), circuit.after(26)) == (26, 28, 26, 26)
    assert circuit.after(51) == 51


def test_a_yard_may_be_visited_more_often_than_the_season_says(answers):
    yard = operation().yards[1]
    assert circuit_of(yard, answers()).step == 2
    assert circuit_of(yard, answers(circuit_days=7)).step == 1
    assert circuit_of(yard, answers(circuit_days=3)).step == 1
    assert DAY.isocalendar().week == 49


def turns(start, region="north"):
    return turns_of(assumptions_of({}, start=start, region=region))


def test_an_order_of_winter_meets_winter_summer_autumn():
    found = turns(dt.date(2025, 12, 1))
    assert found.winter < found.summer < found.autumn
    # ISO weeks 13, 24 (half-way) and 36.
    weeks = iso_weeks(dt.date(2025, 12, 1), 52)
    assert [weeks[at] for at in (found.winter, found.summer, found.autumn)] == [13, 24, 36]


def test_an_order_of_summer_meets_what_is_left_of_it_first():
    start = dt.date(2026, 7, 20)
    told = assumptions_of({}, start=start, region="north")
    found = turns_of(told)
    assert found.summer <= found.autumn < found.winter
    assert summers_end_first(told)
    assert 0 < summer_left(told) < 0.5


@given(DAYS, st.sampled_from(["north", "middle", "south", "southern-long", "southern-short"]))
def test_from_any_day_the_turns_lie_in_the_year_and_in_one_of_two_orders(start, region):
    told = assumptions_of({}, start=start, region=region)
    found = turns_of(told)
    assert all(0 <= at <= 51 for at in (found.summer, found.autumn, found.winter))
    assert found.summer <= found.autumn
    assert 0 <= summer_left(told) <= 1
    if not summers_end_first(told):
        assert found.winter <= found.summer
        assert summer_left(told) == 1


def test_what_a_season_under_way_passed_is_done_at_once_while_late_and_else_comes_after_it():
    begun, day = dt.date(2025, 12, 1), dt.date(2026, 5, 18)  # week 21
    told = assumptions_of({}, start=day, region="north", begun=begun)
    assert due_period(told, 24, late_weeks=4) == 3
    assert due_period(told, 19, late_weeks=4) == 0
    assert due_period(told, 19, late_weeks=1) == 51  # 2026 has a 53rd week
    assert [weeks_since(told, week) for week in (20, 19, 21, 1)] == [1, 2, 52, 20]
    assert not is_ahead(told, 51) and is_ahead(told, 3)
    assert due_period(assumptions_of({}, start=day, region="north"), 19, late_weeks=4) == 51
