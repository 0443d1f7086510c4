"""What-ifs beside a run, taking one over, runs side by side, and what changed since."""

import datetime as dt
from dataclasses import replace

import pytest

from planner import runs, variants
from planner.errors import (
    AlreadyChecking,
    NotDone,
    NothingSupposed,
    NothingToTakeOver,
    OnlyChecks,
    Supposed,
    TooManyBeside,
    UnknownSupplier,
)
from planner.models import Run
from tests.planner import made, outfit

NOON = dt.datetime(2025, 1, 15, 12, tzinfo=dt.UTC)


@pytest.fixture
def done(db):
    outfit.make_outfit()
    season = outfit.make_season()
    return made.make_done_run(season, day=season.starts_on, begun=season.starts_on, scenarios=5, seed=4)


def ask(run, **wanted):
    return variants.ask_what_if(run, wanted, who=None, now=NOON)


def test_a_what_if_is_the_same_planning_with_something_supposed(done):
    asked = ask(done, budget="900.00", answers={"survival_share": 0.5}, prices={"mill": 10}, without=["bees"])
    assert (asked.parent, asked.status, asked.day) == (done, Run.Status.WAITING, done.day)
    assert (asked.scenarios, asked.seed, asked.budget_cents) == (5, 4, 90_000)
    assert asked.answers == {"survival_share": 0.5}
    assert asked.what_if["prices"] == {"mill": 10} and asked.what_if["without"] == ["bees"]
    operation, told = runs.season_facts(done.day, asked.answers, begun=asked.begun, what_if=asked.what_if)
    assert "bees" not in {offer.supplier for offer in operation.offers}
    assert told.survival_share == 0.5


def test_a_what_if_of_a_what_if_supposes_both(done):
    first = ask(done, prices={"mill": 10})
    Run.objects.filter(pk=first.pk).update(status=Run.Status.DONE, report=done.report)
    first.refresh_from_db()
    second = ask(first, answers={"target_colonies": 20})
    assert (second.what_if["prices"], second.answers) == ({"mill": 10}, {"target_colonies": 20})
    assert variants.family(second) == variants.family(done) == [done, first, second]


def test_a_what_if_without_a_change_is_refused(done):
    for nothing in ({}, {"budget": str(done.budget)}, {"prices": {"mill": 0}}, {"answers": {}}):
        with pytest.raises(NothingSupposed, match="Nothing is changed against run"):
            ask(done, **nothing)
    assert Run.objects.count() == 1


def test_a_what_if_beside_a_run_that_is_not_done_is_refused(done):
    waiting = made.make_run(done.season)
    with pytest.raises(NotDone):
        ask(waiting, budget="1.00")


def test_an_unknown_supplier_is_refused_before_any_wait(done):
    with pytest.raises(UnknownSupplier, match="nobody"):
        ask(done, without=["nobody"])
    assert Run.objects.count() == 1


def test_a_what_if_is_never_approved(done):
    asked = ask(done, prices={"all": -10})
    Run.objects.filter(pk=asked.pk).update(status=Run.Status.DONE, report=done.report)
    with pytest.raises(Supposed, match=r"is a what-if \(all prices 10 % down\): nothing is ordered"):
        runs.approve(asked, who=None, on=done.day)
    assert runs.approvable(done).lines


def test_answers_and_budget_of_a_what_if_are_taken_over_into_the_season(done):
    done.season.answers = {"circuit_days": 10}
    done.season.save()
    asked = ask(done, budget="900.00", answers={"target_colonies": 20})
    season = variants.take_over(asked)
    assert season.answers == {"circuit_days": 10, "target_colonies": 20}
    assert season.budget_cents == 90_000


def test_supposed_prices_are_no_answers_to_take_over(done):
    with pytest.raises(NothingToTakeOver, match="supposes only prices"):
        variants.take_over(ask(done, prices={"all": 5}))


def test_all_mediums_supposes_the_set_of_mediums_there_is(done):
    assert variants.mediums(done) == {"home": "three-mediums-10", "answers": {}}
    done.answers = {"super_depth": "shallow"}
    assert variants.mediums(done)["answers"] == {"super_depth": "medium"}


def test_beliefs_are_checked_by_one_run_at_a_time(done):
    asked = variants.ask_check(done, who=None, now=NOON)
    assert asked.only_checks and asked.beliefs and variants.check_under_way(done) == asked
    with pytest.raises(
        AlreadyChecking, match=f"Run {asked.pk} is checking the beliefs of run {done.pk} just now"
    ):
        variants.ask_check(done, who=None, now=NOON)
    runs.cancel(asked)
    assert variants.ask_check(done, who=None, now=NOON).pk > asked.pk


def test_only_the_beliefs_of_a_run_that_is_done_are_checked(done):
    waiting = made.make_run(done.season)
    for run in (waiting, variants.ask_check(done, who=None, now=NOON)):
        with pytest.raises(NotDone):
            variants.ask_check(run, who=None, now=NOON)


def test_a_check_has_no_order_to_approve_to_compare_or_to_suppose_beside(done):
    asked = variants.ask_check(done, who=None, now=NOON)
    Run.objects.filter(pk=asked.pk).update(status=Run.Status.DONE)
    asked.refresh_from_db()
    assert not asked.is_done and asked.is_over
    with pytest.raises(OnlyChecks, match=f"only checks the beliefs of run {done.pk}"):
        runs.approve(asked, who=None, on=done.day)
    assert variants.family(done) == [done]
    with pytest.raises(NotDone):
        ask(asked, budget="1.00")
    later = made.make_run(done.season, status=Run.Status.DONE, report=done.report)
    assert variants.run_before(later) == done


def test_a_run_follows_the_last_done_run_of_its_season_and_a_what_if_its_parent(done):
    assert variants.changes_since(done) is None
    made.make_run(done.season, status=Run.Status.FAILED)
    what_if = made.make_run(
        done.season, status=Run.Status.DONE, report=done.report, parent=done, what_if={"prices": {"all": 5}}
    )
    report = replace(made.make_report(), budget=None)
    later = made.make_run(done.season, status=Run.Status.DONE, report=made.as_json(report))
    assert (variants.run_before(later), variants.run_before(what_if)) == (done, done)
    changes = variants.changes_since(later)
    assert changes.since == f"run {done.pk}" and "without limit" in changes.causes[0]
    assert not variants.changes_since(what_if).is_change


def test_a_run_whose_report_is_of_another_shape_is_not_compared(done):
    later = made.make_run(done.season, status=Run.Status.DONE, report=done.report)
    Run.objects.filter(pk=done.pk).update(report={"day": "2020-01-01"})
    assert variants.changes_since(later) is None


def test_two_to_four_done_runs_stand_side_by_side(done):
    others = [made.make_run(done.season, status=Run.Status.DONE, report=done.report) for _ in range(4)]
    assert len(variants.beside([done, *others[:3]]).columns) == 4
    for found in ([done], [done, *others]):
        with pytest.raises(TooManyBeside, match=f"^{len(found)} runs"):
            variants.beside(found)
    with pytest.raises(NotDone):
        variants.beside([done, made.make_run(done.season)])
