"""The order page's charts: round axes, spans to scale, the order compared with at its name, the curve's places."""

import itertools
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.charts import NEAR, axis, bad_years_chart, signed, trial_chart
from tests.planner import made


def test_an_axis_has_round_ends_beyond_what_it_shows():
    scale = axis(-1450, 3200)
    assert (scale.low, scale.high, scale.step) == (-2000, 4000, 1000)
    assert scale.steps == [-2000, -1000, 0, 1000, 2000, 3000, 4000]


@given(st.floats(-1e6, 1e6), st.floats(0, 1e6))
def test_any_axis_holds_what_it_shows_in_at_most_seven_steps(low, width):
    scale = axis(low, low + width)
    assert scale.low <= low and scale.high >= low + width - 1e-6
    assert len(scale.steps) <= 8
    assert scale.place(low) <= scale.place(low + width)


def test_where_all_are_alike_there_is_an_axis_all_the_same():
    assert axis(5, 5).low < 5 < axis(5, 5).high
    assert axis(0, 5e-324).low < 0 < axis(0, 5e-324).high


def test_sums_are_signed():
    assert (signed(Decimal(1180)), signed(Decimal(-340)), signed(Decimal(0))) == ("+1,180", "−340", "0")


def test_each_order_but_the_one_compared_with_has_its_span_to_scale():
    chart = trial_chart(made.make_trial())
    assert [each.name for each in chart.rows] == [
        "Rule of thumb",
        "Mean season only",
        "This order",
        "Knowing the future",
    ]
    per_cent = (chart.rows[3].high - chart.rows[3].low) / (3200 - 100)
    for each in chart.rows:
        wide = float(each.row.high - each.row.low)
        assert each.high - each.low == pytest.approx(per_cent * wide, abs=0.01)
        assert each.low <= each.mean <= each.high
        assert each.mean - chart.zero == pytest.approx(per_cent * float(each.row.over), abs=0.01)
    assert [each.is_ours for each in chart.rows] == [False, False, True, False]


def test_the_order_compared_with_stands_at_zero_by_its_name_and_no_figure_touches_it():
    chart = trial_chart(made.make_trial())
    assert chart.zero_name == "yours"
    for mark in chart.marks:
        assert not mark.label or abs(mark.at - chart.zero) >= NEAR


def test_the_description_says_what_is_drawn():
    said = trial_chart(made.make_trial()).said
    assert "This order: +1,200 a season, 19 seasons of 20 between −200 and +2,650." in said


def test_one_order_alone_is_no_chart():
    trial = made.make_trial(rows=made.make_trial().rows[1:2])
    assert trial_chart(trial) is None


def test_the_curve_stands_up_by_the_mean_and_across_by_bad_years():
    chart = bad_years_chart(made.make_bad_years(), "USD")
    assert len(chart.places) == 3 and len(chart.lines) == 2
    for before, after in itertools.pairwise(chart.places):
        assert after.x > before.x  # bad years better
        assert after.y > before.y  # the mean lower on the sheet
    assert [place.chosen for place in chart.places] == [True, False, False]
    assert all(0 <= place.y <= chart.base for place in chart.places)
    assert "At 40% on bad years the mean season is $6,480 and the worst 10% of seasons $1,390." in chart.said
