"""The bars of the belief check: to scale, to both sides, none where nothing is lost."""

from decimal import Decimal

from planner.beliefs_chart import CENTRE, MOST_ROWS, beliefs_chart
from tests.planner.beliefs.samples import make_belief, make_end, make_section


def test_bars_reach_as_far_as_what_is_lost():
    row = beliefs_chart(make_section(), "USD").rows[0]
    assert (row.low_said, row.high_said) == ("55 %: $140", "85 %: $60")
    assert abs((CENTRE - row.low) * 60 - (row.high - CENTRE) * 140) < 0.1
    assert row.is_first


def test_an_end_not_weighed_has_no_bar():
    row = beliefs_chart(make_section(rows=(make_belief(low=None),)), "USD").rows[0]
    assert (row.low, row.low_said) == (None, "")


def test_without_anything_lost_there_is_no_chart():
    nothing = make_end(regret=Decimal(0))
    assert beliefs_chart(make_section(rows=(make_belief(low=nothing, high=nothing),)), "USD") is None


def test_only_the_dearest_are_drawn_and_all_are_said():
    rows = tuple(make_belief(key=f"k{n}") for n in range(12))
    chart = beliefs_chart(make_section(rows=rows), "USD")
    assert len(chart.rows) == MOST_ROWS
    assert chart.said.count("55 %: $140 and 85 %: $60.") == MOST_ROWS
    assert max(mark.at for mark in chart.marks) <= 98 and min(mark.at for mark in chart.marks) >= 2
