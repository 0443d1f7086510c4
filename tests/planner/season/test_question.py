"""One question is a record that cannot be changed."""

import dataclasses

import pytest

from planner.season.question import JUDGEMENT, Question


def test_a_question_without_a_source_is_marked_judgement():
    question = Question(key="x", group="bees", ask="How many?", help="In all.")
    assert question.source == JUDGEMENT
    with pytest.raises(dataclasses.FrozenInstanceError):
        question.key = "y"
