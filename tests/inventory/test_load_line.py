"""A load against the truck's limit: lengths mean pounds or cubic feet, figures are round."""

from decimal import Decimal

import pytest

from inventory.load_line import INSET, load_line


def test_lengths_are_in_proportion():
    line = load_line(500, 1500)
    assert line.start == INSET
    assert line.load - line.start == pytest.approx((line.limit - line.start) / 3, abs=0.01)


def test_the_scale_ends_on_a_round_figure_past_limit_and_load():
    assert [figure for _, figure in load_line(0, 1500).marks] == ["0", "500", "1,000", "1,500"]
    assert load_line(2600, 1500).until == 3000
    assert load_line(0, 0).until == 5


@pytest.mark.parametrize("furthest", [3, 7, 10, 99, 640, 1500, 1999, 7200, 44000])
def test_figures_are_five_at_most_beside_the_zero(furthest):
    line = load_line(0, furthest)
    assert 1 <= len(line.marks) - 1 <= 5
    assert line.until >= furthest


def test_a_part_of_a_pound_counts_whole():
    line = load_line(Decimal("57.84"), 500)
    assert (line.amount, line.over) == (58, False)


def test_over_the_limit_is_said_and_never_drawn_past_the_sheet():
    line = load_line(Decimal("500.1"), 500)
    assert line.over and line.load <= 100 - INSET
