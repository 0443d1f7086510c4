"""The ruler of words: only pages that exist, the current one marked."""

import pytest
from django.contrib.auth.models import AnonymousUser
from django.template import Context, Template

from apiary.rights import HELPER, READER
from apiary.templatetags.sheet import may, may_see_money, words_for
from tests.makers import make_person

pytestmark = pytest.mark.django_db


@pytest.fixture
def keeper():
    return make_person()


def words(here, person):
    return [str(word["word"]) for word in words_for(here, person)]


def marked(here, person):
    return [str(word["word"]) for word in words_for(here, person) if word["current"]]


def test_the_page_one_is_on_is_marked(keeper):
    assert marked("home", keeper) == ["This week"]
    assert [word["current"] for word in words_for("yards", keeper) if word["current"]] == ["page"]


def test_a_yard_and_a_colony_stand_under_yards(keeper):
    assert marked("yard", keeper) == marked("colony", keeper) == ["Yards"]


def test_runs_side_by_side_stand_under_season(keeper):
    assert marked("run-order", keeper) == marked("runs-beside", keeper) == ["Season"]


def test_what_the_phone_keeps_under_more_marks_more_too(keeper):
    assert marked("load-sheet", keeper) == ["Load a sheet", "More"]


def test_a_word_whose_page_does_not_exist_is_left_out(settings, keeper):
    settings.ROOT_URLCONF = "tests.apiary.templatetags.few_urls"
    assert words("home", keeper) == ["This week"]


def test_a_stranger_sees_no_words():
    assert Template("{% load sheet %}{% navigation %}").render(Context({})).strip() == ""


def test_a_helper_and_a_reader_see_only_words_that_lead_somewhere_for_them():
    helper, reader = make_person("sam", role=HELPER), make_person("kim", role=READER)
    assert words("home", helper) == ["This week", "Yards", "Gear", "Deadouts", "Orders", "More"]
    assert words("home", reader) == ["This week", "Yards", "Gear", "Deadouts", "More"]


def test_pages_ask_what_is_open_and_whether_money_is_shown(keeper):
    helper = make_person("sam", role=HELPER)
    assert may(keeper, "books") and may_see_money(keeper)
    assert may(helper, "act-move") and not may(helper, "books") and not may_see_money(helper)
    assert not may(AnonymousUser(), "home") and not may_see_money(AnonymousUser())
