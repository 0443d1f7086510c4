"""The questions with a region's defaults."""

import pytest

from planner.season.questions import QUESTIONS, question_of, questions_for


def test_the_region_fills_the_calendar_and_the_stores():
    north = {question.key: question.default for question in questions_for("north")}
    south = {question.key: question.default for question in questions_for("south")}
    assert north["region"] == "north"
    assert north["split_week"] > south["split_week"]
    assert north["stores_target_lb"] > south["stores_target_lb"]


def test_a_long_winter_takes_more_than_a_short_one():
    shares = [
        next(question.default for question in questions_for(region) if question.key == "survival_share")
        for region in ("north", "middle", "south")
    ]
    assert shares == sorted(shares)
    # Steinhauer et al. (2014): 30.6 % lost; Kulhanek et al. (2017): 26.9 %.
    assert shares[0] == pytest.approx(1 - 0.306, abs=0.005)
    assert shares[-1] == pytest.approx(1 - 0.269, abs=0.005)


def test_only_the_target_and_the_keepers_winters_are_left_without_a_default():
    without = [question.key for question in questions_for("middle") if question.default is None]
    assert without == ["winters", "target_colonies"]


def test_a_question_is_found_by_its_key():
    assert question_of("fill_share") in QUESTIONS
    with pytest.raises(KeyError):
        question_of("moon_phase")
