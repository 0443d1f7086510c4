"""The page of what follows an order: who sees what, older orders, orders that are not done."""

from dataclasses import replace

import pytest
from django.urls import reverse

from apiary.rights import HELPER, READER
from planner.models import Run
from tests import makers
from tests.planner import made
from tests.planner.after import made as after_made
from tests.planner.pages import page, text


@pytest.fixture
def run(db):
    return made.make_done_run(report=replace(made.make_report(), after=after_made.section()))


def test_it_shows_loads_evenings_feed_and_pulls_with_a_caution(keeper, run):
    shown = text(page(keeper, "run-after", run.pk))
    for words in (
        "Week of 7 May 2027",
        "30 × box medium 10; 270 × comb medium honey",
        "285 of 1,000 lb, 41 of 50 cubic ft",
        "extra trip",
        "assemble a medium box",
        "2:1 by weight",
        "buy 216 lb",
        "Late or not there",
        "Keep a day free",
        "week of 30 July, full supers to take home",
        "Caution: lifting and loads",
    ):
        assert words in shown, words


def test_the_order_leads_to_it_and_tells_the_first_of_it(keeper, run):
    answer = page(keeper, "run-order", run.pk)
    assert reverse("run-after", args=[run.pk]) in answer.content.decode()
    assert "In 90 seasons of 100 this hauling plan is enough." in text(answer)


def test_an_order_from_before_says_so_and_its_page_still_opens(keeper, db):
    old = made.make_done_run()
    report = dict(old.report)
    del report["after"]
    Run.objects.filter(pk=old.pk).update(report=report)
    assert "before loads and evenings were planned" in text(page(keeper, "run-after", old.pk))
    assert page(keeper, "run-order", old.pk).status_code == 200


def test_an_order_that_is_not_done_says_so(keeper, db):
    assert "not worked out yet" in text(page(keeper, "run-after", made.make_run().pk))


@pytest.mark.parametrize("role", [HELPER, READER])
def test_others_see_the_loads_of_their_yards_only_and_no_price(client, run, role):
    yard = makers.make_yard("upper-meadow")
    client.force_login(makers.make_person("sam", role=role, yards=[yard]))
    shown = text(page(client, "run-after", run.pk))
    assert "Upper meadow" in shown and "Mill race" not in shown
    assert "$" not in shown


def test_a_stranger_is_sent_to_the_door(client, run):
    assert page(client, "run-after", run.pk).url.startswith(reverse("sign-in"))
