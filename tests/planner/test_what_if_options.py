"""What is supposed on the command line: the same as on the what-if page, and each refusal."""

import argparse

import pytest
from django.core.management import CommandError

from planner.errors import NoMediumSet
from planner.supposing import words_of
from planner.what_if_options import add_what_if, what_if_of
from tests.planner import outfit


@pytest.fixture
def books(db):
    outfit.make_outfit()


def supposed(*words, answers=None):
    parser = argparse.ArgumentParser()
    add_what_if(parser)
    return what_if_of(vars(parser.parse_args(words)), outfit.DAY, None, answers or {})


def test_nothing_told_supposes_nothing(books):
    assert supposed(answers={"circuit_days": 10}) == ({"circuit_days": 10}, {})


def test_survival_and_colonies_are_answers_prices_and_suppliers_are_not(books):
    answers, what_if = supposed(
        "--survive", "55", "--colonies", "20", "--prices", "10,mill=-5", "--without", "bees"
    )
    assert answers == {"survival_share": 0.55, "target_colonies": 20}
    assert what_if == {"answers": answers, "prices": {"all": 10, "mill": -5}, "without": ["bees"]}
    assert "55 of 100 come through" in words_of(what_if) and "20 colonies in autumn" in words_of(what_if)


def test_mediums_alone_change_the_supers_where_they_are_answered_otherwise(books):
    answers, what_if = supposed("--mediums", answers={"super_depth": "shallow"})
    assert answers["super_depth"] == "medium" and what_if["home"]
    assert "new hives in mediums alone" in words_of(what_if)


def test_mediums_are_refused_where_no_such_set_has_its_gear(books, monkeypatch):
    monkeypatch.setattr("planner.what_if_options.mediums_of", lambda operation, answers: None)
    with pytest.raises(NoMediumSet, match="No hive set of mediums alone has its gear told: add one first"):
        supposed("--mediums")


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--survive", "120"), "--survive: a number from 0 to 100, got '120'"),
        (("--survive", "most"), "--survive: a number from 0 to 100, got 'most'"),
        (("--colonies=-3",), "--colonies: a whole number from 0 to 5,000, got '-3'"),
        (("--colonies", "5001"), "--colonies: a whole number from 0 to 5,000, got '5001'"),
        (("--prices", "mill=-95"), "--prices: whole per cents from -90 to 300"),
    ],
)
def test_what_will_not_do_is_told_with_2(words, said):
    with pytest.raises(CommandError, match=said) as refusal:
        supposed(*words)
    assert refusal.value.returncode == 2
