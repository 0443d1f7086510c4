"""This week tells what to load for each yard, from the approved order, only of yards that are theirs."""

import datetime as dt
from dataclasses import replace

import pytest
from django.template import Context, Template
from django.urls import reverse
from django.utils import timezone

from apiary.rights import HELPER
from tests import makers
from tests.planner import made
from tests.planner.after import made as after_made

WEEK_28 = after_made.week(28)


@pytest.fixture
def run(db):
    report = replace(made.make_report(), after=after_made.section())
    return made.make_done_run(report=report, approved_at=timezone.now())


def told(user, today):
    page = Template("{% load loading %}{% loads_this_week today %}")
    return page.render(Context({"user": user, "today": today}))


def test_the_loads_of_the_week_are_told_with_a_caution(run):
    shown = told(makers.make_person(), WEEK_28 + dt.timedelta(days=3))
    assert (
        "Mill race" in shown
        and "16 × box medium 10, full" in shown
        and "Extra trip, if the first is full." in shown
    )
    assert "Caution: lifting and loads" in shown
    assert reverse("run-after", args=[run.pk]) in shown


def test_a_trip_to_keep_a_day_free_for_is_told_in_its_week_and_what_was_lacking_goes_first(run):
    keeper = makers.make_person()
    shown = told(keeper, WEEK_28)
    assert "Keep a day free: 15 seasons of 100 ask for 1 trip more, full supers to take home." in shown
    assert "Load first what you saw the yard lack on your last visit." in shown
    assert "Keep a day free" not in told(keeper, after_made.week(16))


@pytest.mark.parametrize("days", [-7, 7])
def test_other_weeks_have_their_own_loads_or_none(run, days):
    assert told(makers.make_person(), WEEK_28 + dt.timedelta(days=days)).strip() == ""


def test_a_helper_is_told_the_loads_of_their_yards(run):
    helper = makers.make_person("sam", role=HELPER, yards=[makers.make_yard("upper-meadow")])
    shown = told(helper, WEEK_28)
    assert "Upper meadow" in shown and "Mill race" not in shown


def test_before_an_order_is_approved_nothing_is_told(db):
    made.make_done_run(report=replace(made.make_report(), after=after_made.section()))
    assert told(makers.make_person(), WEEK_28).strip() == ""


def test_an_order_from_before_loads_were_planned_tells_none(db):
    made.make_done_run(approved_at=timezone.now())
    assert told(makers.make_person(), WEEK_28).strip() == ""
