"""Places along a line: lengths stand for amounts, scales are round, nothing leaves the sheet."""

import math

from hypothesis import given
from hypothesis import strategies as st

from planner.rulers import MOST_LABELS, budget_line, need_ruler, round_step, ruler

AMOUNTS = st.floats(min_value=1, max_value=1e7, allow_nan=False)


@given(AMOUNTS)
def test_a_step_is_one_two_two_and_a_half_or_five_times_a_power_of_ten(until):
    step = round_step(until)
    leading = step / 10 ** math.floor(math.log10(step) + 1e-9)
    assert min(abs(leading - factor) for factor in (1, 2, 2.5, 5, 10)) < 1e-6
    assert until / step <= MOST_LABELS + 1e-6


@given(AMOUNTS)
def test_a_closed_ruler_ends_on_a_round_mark_at_or_beyond_the_amount(until):
    scale = ruler(until)
    assert scale.until >= until - 1e-6 * until
    labelled = [mark for mark in scale.marks if mark.label]
    assert abs(labelled[-1].at - scale.place(scale.until)) < 1e-6


@given(AMOUNTS, AMOUNTS)
def test_a_length_means_an_amount(first, second):
    scale = ruler(max(first, second))
    zero, one, two = scale.place(0), scale.place(first), scale.place(second)
    assert abs((one - zero) * second - (two - zero) * first) <= 0.002 * max(first, second)


def test_the_budget_of_4500_is_marked_every_500():
    labels = [mark.label for mark in budget_line(4074, 4500).ruler.marks if mark.label]
    assert labels == ["0", "500", "1,000", "1,500", "2,000", "2,500", "3,000", "3,500", "4,000", "4,500"]


def test_a_limit_that_is_not_round_has_no_figure_on_the_axis():
    labels = [mark.label for mark in budget_line(100, 4321).ruler.marks if mark.label]
    assert "4,321" not in labels


def test_the_order_is_solid_to_its_sum_and_dashed_to_the_limit():
    line = budget_line(2250, 4500)
    assert line.spent == 50.0
    assert line.limit > line.spent
    assert line.label_anchor == "middle"


def test_a_short_segment_has_its_label_beside_it():
    line = budget_line(450, 4500)
    assert (line.label_anchor, line.label_at) == ("start", line.spent)


def test_without_a_limit_the_line_ends_where_the_order_does():
    assert budget_line(4074, None).limit is None


def test_an_order_that_uses_all_of_the_budget_has_no_dashed_rest():
    assert budget_line(4500, 4500).limit is None


def test_nothing_spent_of_no_budget_draws_nothing():
    assert budget_line(0, 0) is None
    assert budget_line(0, None) is None


def test_bars_of_owned_gear_lie_end_to_end_from_zero():
    drawn = need_ruler(sound=198, coming=20, to_mend=14, need=272, low=258, high=291)
    (start, sound), (second, coming), (third, _mend) = drawn.sound, drawn.coming, drawn.to_mend
    assert start == drawn.ruler.place(0)
    assert abs(start + sound - second) < 0.01
    assert abs(second + coming - third) < 0.01


def test_the_need_stands_inside_its_band_and_on_the_ruler():
    drawn = need_ruler(sound=198, coming=0, to_mend=14, need=272, low=258, high=291)
    left, width = drawn.band
    assert left < drawn.need < left + width <= 100


def test_a_need_of_nothing_and_nothing_owned_draws_nothing():
    assert need_ruler(sound=0, coming=0, to_mend=0, need=0, low=0, high=0) is None
