"""Every doubt is about a question (or the yards' flows), says where its span is from and how to find out."""

from planner.beliefs.doubts import DOUBTS
from planner.season.questions import QUESTIONS

KEYS = {question.key for question in QUESTIONS}


def test_every_doubt_is_about_an_answer_and_no_two_about_the_same():
    keys = [doubt.key for doubt in DOUBTS]
    assert len(set(keys)) == len(keys)
    assert set(keys) - KEYS == {"window_lb"}


def test_every_doubt_has_its_words():
    for doubt in DOUBTS:
        assert "{value}" in doubt.said, doubt.key
        assert doubt.source and doubt.find_out.endswith("."), doubt.key
        assert doubt.name[0].islower() and not doubt.name.endswith("."), doubt.key


def test_what_moves_along_or_bounds_is_a_question_too():
    for doubt in DOUBTS:
        assert {*doubt.moves, doubt.within or "region", doubt.needs or "region"} <= KEYS
