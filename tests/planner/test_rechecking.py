"""A run's beliefs checked later: what it found is written into the order's report, and not on changed books."""

import datetime as dt

import pytest

from planner import queue, runs, variants
from planner.errors import BooksMoved
from planner.models import Run
from planner.plan.json_form import report_from
from planner.rechecking import checked_report
from tests import makers
from tests.planner import outfit

NOON = dt.datetime(2025, 1, 15, 12, tzinfo=dt.UTC)
QUICK = {"scenarios": 4, "seed": 2, "seconds": 60, "trial": 0}


@pytest.fixture
def done(db):
    outfit.make_outfit()
    runs.ask(outfit.make_season(), who=None, now=NOON, **QUICK)
    return runs.work(queue.take("test", NOON))


def facts(run):
    return runs.season_facts(run.day, run.answers, begun=run.begun, what_if=run.what_if)


@pytest.mark.long
def test_the_check_is_of_the_order_as_found_and_books_that_moved_refuse_it(done):
    report = checked_report(
        done, *facts(done), seconds=20.0, progress=lambda stage: None, cancelled=lambda: False
    )
    before = report_from(done.report)
    assert report.beliefs.seasons == 4 and report.beliefs.rows
    assert [(line.offer, line.packs) for line in report.lines] == [
        (line.offer, line.packs) for line in before.lines
    ]
    assert all(line.why.otherwise for line in report.lines)
    assert report.spend == before.spend and before.beliefs is None

    makers.put(outfit.shed(), {"box-deep-10": 40}, day=outfit.EARLIER)
    with pytest.raises(BooksMoved, match=f"are no longer those run {done.pk} was worked out from"):
        checked_report(done, *facts(done), progress=lambda stage: None, cancelled=lambda: False)


def test_a_check_asked_for_is_written_into_the_report_of_its_run(done, monkeypatch):
    monkeypatch.setattr("planner.rechecking.CHECK_SECONDS", 20.0)
    asked = variants.ask_check(done, who=None, now=NOON)
    over = runs.work(queue.take("test", NOON))
    assert (over.pk, over.status, over.is_done) == (asked.pk, Run.Status.DONE, False)
    assert over.message == f"The beliefs of run {done.pk} are checked."
    done.refresh_from_db()
    assert report_from(done.report).beliefs.rows
    assert runs.approve(done, who=None, on=done.day)


def test_a_check_that_is_refused_leaves_the_order_as_it_was(done):
    variants.ask_check(done, who=None, now=NOON)
    makers.put(outfit.shed(), {"box-deep-10": 40}, day=outfit.EARLIER)
    over = runs.work(queue.take("test", NOON))
    assert over.status == Run.Status.FAILED and "no longer those" in over.message
    before = done.report
    done.refresh_from_db()
    assert (done.status, done.report) == (Run.Status.DONE, before)
