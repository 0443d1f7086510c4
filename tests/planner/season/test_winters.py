"""Winters as they are typed: read in any of the ways a keeper writes them, refused in a sentence."""

import pytest

from planner.season.questions import question_of
from planner.season.winters import MOST_WINTERS, winters_in_words, winters_of

QUESTION = question_of("winters")
PAIRS = ((60, 44), (72, 58))


@pytest.mark.parametrize(
    "told",
    [
        "60/44, 72/58",
        "60/44;72/58",
        "60 / 44 72 / 58",
        "60/44\n72/58",
        [[60, 44], [72, 58]],
        PAIRS,
        "60/44,,72/58,",
    ],
)
def test_pairs_are_read_however_they_are_written(told):
    assert winters_of(QUESTION, told) == PAIRS


@pytest.mark.parametrize("told", ["", " ", ",", []])
def test_no_pairs_are_none(told):
    assert winters_of(QUESTION, told) is None


@pytest.mark.parametrize("pair", ["60/0", "60/60", "1/1"])
def test_a_winter_may_take_all_or_none(pair):
    assert winters_in_words(winters_of(QUESTION, pair)) == pair


@pytest.mark.parametrize(
    ("told", "words"),
    [
        ("60", "“60” is not that"),
        ("60/44/3", "“60/44/3” is not that"),
        ("sixty/44", "“sixty/44” is not that"),
        ("60.5/44", "is not that"),
        ("60/-4", "is not that"),
        (7, "“7” is not that"),
        ([[60, 44], 7], "“7” is not that"),
        ("0/0", "1 to 5000 colonies may go into a winter; 0 lies outside"),
        ("60/70", "70 came out of 60 that went in: that is more than there were"),
        (",".join(["9/8"] * (MOST_WINTERS + 1)), "21 winters are more than fit"),
    ],
)
def test_what_is_no_winter_is_told_in_a_sentence(told, words):
    with pytest.raises(ValueError, match=r"last five winters\?") as fault:
        winters_of(QUESTION, told)
    assert words in str(fault.value)


def test_winters_are_shown_as_they_are_typed():
    assert winters_in_words(PAIRS) == "60/44, 72/58"
