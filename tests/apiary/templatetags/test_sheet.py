"""The ruler of words: only pages that exist, the current one marked."""

from django.template import Context, Template

from apiary.templatetags.sheet import words_for


def marked(here):
    return [str(word["word"]) for word in words_for(here) if word["current"]]


def test_the_page_one_is_on_is_marked():
    assert marked("home") == ["This week"]
    assert [word["current"] for word in words_for("yards") if word["current"]] == ["page"]


def test_a_yard_and_a_colony_stand_under_yards():
    assert marked("yard") == marked("colony") == ["Yards"]


def test_what_the_phone_keeps_under_more_marks_more_too():
    assert marked("load-sheet") == ["Load a sheet", "More"]


def test_a_word_whose_page_does_not_exist_is_left_out(settings):
    settings.ROOT_URLCONF = "tests.apiary.templatetags.few_urls"
    assert [str(word["word"]) for word in words_for("home")] == ["This week"]


def test_a_stranger_sees_no_words():
    assert Template("{% load sheet %}{% navigation %}").render(Context({})).strip() == ""
