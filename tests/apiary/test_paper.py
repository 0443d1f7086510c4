"""The paper of a printed sheet: by the keeper's money, until a person chooses; a choice is kept for them alone."""

import pytest
from django.contrib.sessions.backends.db import SessionStore
from django.test import RequestFactory

from apiary.paper import paper_of
from tests import makers

pytestmark = pytest.mark.django_db


def asked(paper="", session=None):
    request = RequestFactory().get("/", {"paper": paper} if paper else {})
    request.session = SessionStore() if session is None else session
    return request


@pytest.mark.parametrize(
    ("money", "paper"),
    [("USD", "letter"), ("CAD", "letter"), ("MXN", "letter"), ("EUR", "a4"), ("AUD", "a4")],
)
def test_the_usual_paper_follows_the_keepers_money(money, paper):
    makers.make_keeper(money=money)
    assert paper_of(asked()) == paper


def test_while_no_keeper_is_written_down_it_is_a4():
    assert paper_of(asked()) == "a4"


def test_a_choice_is_kept_and_can_be_changed():
    makers.make_keeper(money="USD")
    session = SessionStore()
    assert paper_of(asked("a4", session)) == "a4"
    assert paper_of(asked("", session)) == "a4"
    assert paper_of(asked("letter", session)) == "letter"
    assert paper_of(asked("", session)) == "letter"
    assert paper_of(asked()) == "letter"


def test_an_unknown_paper_is_passed_over_and_not_kept():
    makers.make_keeper(money="EUR")
    session = SessionStore()
    assert paper_of(asked("papyrus", session)) == "a4"
    assert "paper" not in session
