"""The requirement by week adds up over yards and shows what is owned."""

import numpy as np
import pytest

from planner.requirement import by_week
from tests.planner.operations import operation


@pytest.fixture
def lines(season_problem):
    return {(line.part, line.yard): line for line in by_week(operation(), season_problem(count=8))}


def test_the_yards_make_the_whole_in_the_mean(lines):
    whole = np.array(lines["box-medium-10", ""].mean)
    yards = sum(
        np.array(line.mean) for (part, yard), line in lines.items() if part == "box-medium-10" and yard
    )
    assert yards == pytest.approx(whole, abs=0.02)
    assert whole.max() > 100
    assert whole[0] == 0


def test_nine_seasons_of_ten_need_at_least_the_mean_of_the_busiest_week(lines):
    line = lines["box-medium-10", ""]
    assert line.high[line.peak_week] >= line.mean[line.peak_week]
    assert 26 <= line.peak_week <= 34


def test_what_is_owned_is_shown_by_store_and_in_all(lines):
    assert lines["box-medium-10", ""].owned == 132
    assert lines["box-medium-10", "alder"].owned == 12
    assert lines["box-medium-10", "birch"].owned == 0


def test_spent_parts_count_in_their_week_only(lines):
    weeks = np.flatnonzero(np.array(lines["treatment", ""].mean))
    assert weeks.tolist() == [36]
