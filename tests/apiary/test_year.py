"""The year as a drawing: area is gain, windows over New Year split, weeks 53 and labels."""

import datetime as dt
from decimal import Decimal
from types import SimpleNamespace

import pytest

from apiary.year import GROUND, TALLEST, flow_year, share_of, weeks_in, weeks_of

TODAY = dt.date(2026, 5, 23)


def window(first, last, gain, name="clover"):
    return SimpleNamespace(name=name, first_week=first, last_week=last, gain_lb=Decimal(gain))


def test_2026_has_53_weeks_and_2025_has_52():
    # ISO 8601: a year whose first of January is a Thursday has 53 weeks (2026 is one), by the calendar itself
    assert dt.date(2026, 1, 1).isoweekday() == 4
    assert (weeks_of(2026), weeks_of(2025)) == (53, 52)


def test_the_area_of_a_bar_is_its_gain():
    bars = flow_year([window(15, 19, 12), window(23, 29, 68)], today=TODAY).bars
    areas = [bar.height * sum(width for _left, width in bar.parts) for bar in bars]
    assert areas[1] / areas[0] == pytest.approx(68 / 12, rel=0.05)  # heights are whole pixels
    assert max(bar.height for bar in bars) == TALLEST


def test_bars_stand_on_the_ground():
    assert all(bar.top + bar.height == GROUND for bar in flow_year([window(15, 19, 12)], today=TODAY).bars)


def test_a_window_over_new_year_is_drawn_in_two_parts():
    """A southern summer: weeks 48 to 4."""
    (bar,) = flow_year([window(48, 4, 50)], today=TODAY).bars
    (left, width), (start, rest) = bar.parts
    assert left + width == pytest.approx(100)
    assert start == 0 and rest > 0
    assert bar.weeks == 10  # 48 to 53 and 1 to 4 of 2026


def test_week_53_in_a_year_of_52_is_the_last_week():
    assert weeks_in(window(53, 53, 5), 2025) == 1


def test_today_stands_where_its_day_lies():
    assert flow_year([], today=dt.date(2026, 7, 2)).today == pytest.approx(100 * 182 / 365, abs=0.01)
    assert share_of(dt.date(2026, 1, 1), 2026) == 0


def test_labels_of_neighbours_do_not_lie_on_each_other():
    bars = flow_year([window(22, 24, 30, "black locust"), window(24, 27, 40, "clover")], today=TODAY).bars
    assert abs(bars[0].label - bars[1].label) >= 36


def test_a_yard_without_flow_has_no_bars_and_no_sum():
    flow = flow_year([], today=TODAY)
    assert flow.bars == () and flow.sum_lb == 0
    assert len(flow.months) == 12


def test_a_window_that_gains_nothing_has_no_height():
    assert flow_year([window(20, 22, 0)], today=TODAY).bars[0].height == 0
