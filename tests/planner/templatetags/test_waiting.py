"""The one next step of the winter order, whatever state it is in."""

import datetime as dt

import pytest
from django.urls import reverse
from django.utils import timezone

from planner.models import Run, Season
from planner.templatetags.waiting import season_waits

pytestmark = pytest.mark.django_db


@pytest.fixture
def season():
    return Season.objects.create(name="Winter order 2027", starts_on=dt.date(2026, 12, 1))


def make_run(season, **fields):
    return Run.objects.create(season=season, day=season.starts_on, asked_at=timezone.now(), **fields)


def test_without_a_season_it_begins_one():
    assert season_waits()["address"] == reverse("season")


def test_a_season_without_a_run_is_to_be_answered(season):
    step = season_waits()
    assert step["address"] == reverse("season-answers", args=[season.pk])
    assert "1 December 2026" in step["text"]


def test_a_cancelled_run_counts_as_none(season):
    make_run(season, status=Run.Status.CANCELLED)
    assert season_waits()["word"] == "Answer"


def test_a_run_at_work_tells_its_stage(season):
    run = make_run(season, status=Run.Status.WORKING, stage="drawing seasons")
    step = season_waits()
    assert (step["address"], step["text"]) == (reverse("run", args=[run.pk]), "drawing seasons")


def test_a_failed_run_tells_why(season):
    make_run(season, status=Run.Status.FAILED, message="No offer brings excluders.")
    assert season_waits()["text"] == "No offer brings excluders."


def test_a_done_run_waits_for_the_keepers_word(season):
    run = make_run(season, status=Run.Status.DONE)
    step = season_waits()
    assert step["address"] == reverse("run-order", args=[run.pk])
    assert "not approved" in step["head"]


def test_an_approved_order_waits_for_nothing_but_reading(season):
    make_run(season, status=Run.Status.DONE, approved_at=timezone.now())
    assert "approved" in season_waits()["head"]
