"""The rows of questions: all whole, all with a source, in the keeper's words."""

import pytest

from planner.season.question import GROUPS
from planner.season.questions import QUESTIONS

KINDS = {"number", "whole", "share", "week", "choice", "money", "flag", "winters"}


@pytest.mark.parametrize("question", QUESTIONS, ids=lambda question: question.key)
def test_a_question_is_asked_in_a_sentence_with_help_a_range_and_a_source(question):
    assert question.ask.endswith("?")
    assert question.help.endswith((".", ":"))
    assert question.group in GROUPS
    assert question.kind in KINDS
    assert question.source
    if question.kind == "choice":
        assert len(question.choices) > 1
    elif question.kind not in ("flag",):
        assert question.lowest is not None
        assert question.highest > question.lowest


@pytest.mark.parametrize("question", QUESTIONS, ids=lambda question: question.key)
def test_a_default_lies_in_its_range(question):
    if question.default is None or question.kind == "flag":
        return
    if question.kind == "choice":
        assert question.default in [code for code, _words in question.choices]
    else:
        assert question.lowest <= question.default <= question.highest


def test_what_is_computed_is_never_asked():
    asked = " ".join(question.ask.lower() for question in QUESTIONS)
    for word in ("end value", "overdispersion", "holding cost", "correlation", "spread"):
        assert word not in asked


def test_no_key_is_asked_twice():
    keys = [question.key for question in QUESTIONS]
    assert len(keys) == len(set(keys))
