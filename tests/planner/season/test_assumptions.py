"""Answers checked: each fault a sentence at its own question, all of them at once."""

import datetime as dt

import pytest

from planner.season.assumptions import AnswerFaults, assumptions_of
from planner.season.survival import WINTER_CORRELATION, fitted
from tests.planner.operations import DAY, operation


def faults_of(answers, **more):
    with pytest.raises(AnswerFaults) as caught:
        assumptions_of(answers, start=DAY, region="north", **more)
    return caught.value.messages


def test_no_answers_give_the_defaults():
    answers = assumptions_of({}, start=DAY, region="north")
    assert answers.start == dt.date(2025, 12, 1)
    assert answers.weeks == 52
    assert answers.region == "north"
    assert answers.target_colonies is None
    assert answers.circuit_days == 14
    assert answers.honey_per_super_lb == answers.honey_medium_lb
    assert answers.split_success == 0.7


def test_winters_of_ones_own_tell_survival_and_how_far_it_swings():
    usual = assumptions_of({}, start=DAY, region="north")
    assert (usual.winters, usual.winter_correlation) == (None, WINTER_CORRELATION)
    told = assumptions_of({"winters": "60/54, 70/64, 75/66, 80/73, 82/75"}, start=DAY, region="north")
    assert told.winters[0] == (60, 54)
    assert usual.survival_share < 0.8 < told.survival_share < 0.95
    assert told.winter_correlation < WINTER_CORRELATION
    fit = fitted(told.winters, share=usual.survival_share)
    assert (told.survival_share, told.winter_correlation) == (fit.share, fit.correlation)


def test_a_share_told_beside_the_winters_stands():
    told = assumptions_of({"winters": "60/57", "survival_share": 0.5}, start=DAY, region="north")
    assert told.survival_share == 0.5
    assert told.winter_correlation != WINTER_CORRELATION


def test_answers_as_a_form_sends_them_are_read():
    answers = assumptions_of(
        {
            "survival_share": "0.8",
            "target_colonies": "90",
            "guards": "no",
            "combs_in_super": "8",
            "nucs_sold": "",
        },
        start=DAY,
        region="north",
    )
    assert (answers.survival_share, answers.target_colonies, answers.guards) == (0.8, 90, False)
    assert (answers.combs_in_super, answers.nucs_sold) == (8, 0)


def test_the_answered_region_goes_before_the_keepers():
    assert assumptions_of({"region": "south"}, start=DAY, region="north").stores_target_lb == 40


@pytest.mark.parametrize(
    ("key", "given", "words"),
    [
        ("survival_share", "9,5", "Give a number; “9,5” is none"),
        ("survival_share", 1.2, "between 0 and 1; 1.2 lies outside"),
        ("survival_share", float("nan"), "Give a number"),
        ("split_week", 60, "between 1 and 53; 60 lies outside"),
        ("splits_strong", 1.5, "1.5 is not whole"),
        ("guards", "perhaps", "Answer yes or no; “perhaps” is neither"),
        ("super_depth", "huge", "Choose one of deep, medium, shallow; “huge” is none of them"),
        ("region", "moon", "is none of them"),
        ("winters", "60/70", "70 came out of 60"),
        ("winters", "good", "Give colonies in and out as 60/44"),
        ("summer_loss_share", 2, "lies outside"),
        ("sooner", "never", "“never” is none of them"),
        ("moon_phase", 3, "There is no question “moon_phase”"),
        ("honey_price", -1, "lies outside"),
    ],
)
def test_a_wrong_answer_is_told_in_a_sentence(key, given, words):
    messages = faults_of({key: given})
    assert list(messages) == [key]
    assert words in messages[key]


def test_all_faults_are_told_at_once():
    messages = faults_of({"survival_share": 2, "guards": "perhaps", "circuit_days": "often"})
    assert messages.keys() == {"survival_share", "guards", "circuit_days"}


def test_crops_must_stand_in_order():
    messages = faults_of({"crop_best": 30, "crop_ordinary": 50, "crop_worst": 35})
    assert "must stand in that order" in messages["crop_ordinary"]


def test_a_price_for_more_above_the_usual_price_is_refused():
    messages = faults_of({"honey_price": 2, "honey_price_more": 3})
    assert "swap the two" in messages["honey_price_more"]


def test_a_target_above_the_stands_names_both_and_each_yard():
    messages = faults_of({"target_colonies": 140}, operation=operation())
    assert "140 colonies" in messages["target_colonies"]
    assert "132 stands" in messages["target_colonies"]
    assert "Alder 20, Birch 16" in messages["target_colonies"]
    assert "Shed" not in messages["target_colonies"]


def test_a_target_that_fits_the_stands_is_taken():
    answers = assumptions_of({"target_colonies": 132}, start=DAY, region="north", operation=operation())
    assert answers.target_colonies == 132


def test_supers_of_a_depth_the_catalogue_lacks_are_refused():
    whole = operation()
    parts = tuple(part for part in whole.parts if part.depth != "shallow")
    messages = faults_of({"super_depth": "shallow"}, operation=operation(parts=parts))
    assert "no shallow box" in messages["super_depth"]


def test_limits_by_strength():
    answers = assumptions_of({}, start=DAY, region="north")
    assert [answers.splits_of(word) for word in ("strong", "fair", "weak", "split")] == [2, 1, 0, 0]
    assert [answers.drawn_by(word) for word in ("strong", "fair", "weak", "split")] == [15, 10, 5, 5]


def test_past_winters_of_the_books_stand_where_none_are_answered():
    told = operation(winters=((60, 54), (70, 64)))
    books = assumptions_of({}, start=DAY, region="north", operation=told)
    typed = assumptions_of({"winters": "60/54, 70/64"}, start=DAY, region="north")
    own = assumptions_of({"winters": "60/30"}, start=DAY, region="north", operation=told)
    assert (books.winters, books.survival_share) == (typed.winters, typed.survival_share)
    assert own.winters == ((60, 30),) and own.survival_share < books.survival_share
