"""Asking, working, stopping and approving a run, and each refusal in plain words."""

import datetime as dt
import json
import os
from decimal import Decimal
from pathlib import Path

import pytest
from django.utils import timezone

from inventory.models import Offer, Order, PriceStep
from planner import queue, runs
from planner.errors import (
    AlreadyApproved,
    AlreadyOver,
    FreeOffers,
    NoColonies,
    NoOffers,
    NotDone,
    NothingToOrder,
    OfferGone,
    Overtaken,
    RunTakenOver,
)
from planner.models import Run
from planner.plan.json_form import report_from
from planner.season.assumptions import AnswerFaults
from planner.sizing.reading import problem_of
from planner.solution.plan_json import plan_of
from tests import makers
from tests.planner import made, outfit

NOON = dt.datetime(2025, 1, 15, 12, tzinfo=dt.UTC)
SMALL = {"scenarios": 4, "seed": 2, "seconds": 60, "trial": 20}


@pytest.fixture
def season(db):
    outfit.make_outfit()
    return outfit.make_season()


def leased(season, **settings):
    runs.ask(season, who=None, now=NOON, **{**SMALL, **settings})
    return queue.take("test", NOON)


def test_a_run_keeps_the_answers_and_the_budget_of_the_moment_it_was_asked_for(season):
    season.answers = {"circuit_days": 10}
    run = runs.ask(season, who=None, now=NOON, scenarios=7)
    season.answers, season.budget_cents = {"circuit_days": 21}, 1
    season.save()
    run.refresh_from_db()
    assert (run.answers, run.budget_cents, run.scenarios) == ({"circuit_days": 10}, 200_000, 7)
    assert (run.status, run.day) == (Run.Status.WAITING, outfit.DAY)


def test_a_run_without_colonies_is_refused_before_any_wait(db):
    makers.make_shed()
    makers.make_offer({"excluder-10": 10})
    with pytest.raises(NoColonies, match="enter your yards and colonies first"):
        runs.ask(outfit.make_season(), who=None, now=NOON)
    assert not Run.objects.exists()


def test_a_run_without_a_price_that_still_holds_is_refused(season):
    Offer.objects.update(open_until=outfit.DAY - dt.timedelta(days=1))
    with pytest.raises(NoOffers, match="load a price list"):
        runs.ask(season, who=None, now=NOON)


def test_a_price_of_nothing_is_refused_by_name_unless_it_holds_no_more(season):
    PriceStep.objects.filter(offer__code="mill-floor-10").update(price_cents=0)
    with pytest.raises(
        FreeOffers, match=r"A price of 0 .* for floor-10, 1 a pack: .* gear given to you is stock"
    ):
        runs.ask(season, who=None, now=NOON)
    assert not Run.objects.exists()
    Offer.objects.filter(code="mill-floor-10").update(open_until=outfit.DAY - dt.timedelta(days=1))
    assert runs.ask(season, who=None, now=NOON).status == Run.Status.WAITING


def test_out_of_time_the_best_so_far_stands_with_its_gap_and_is_said_to_be_no_more(season):
    run = runs.work(leased(season, scenarios=25, seconds=0, trial=0))
    report = report_from(run.report)
    assert (run.status, report.standing.status) == (Run.Status.DONE, "time_limit")
    assert report.standing.said.startswith("Time ran out: this is the best order found so far; ")
    assert run.bound >= plan_of(run.plan).objective and run.gap_reached > 0.001
    if not report.lines:
        assert run.message == "No order worth more than buying nothing was found in the time given."


def test_faulty_answers_are_refused_all_at_once(season):
    season.answers = {"circuit_days": 1000, "survival_share": 3}
    with pytest.raises(AnswerFaults) as refusal:
        runs.ask(season, who=None, now=NOON)
    assert set(refusal.value.messages) == {"circuit_days", "survival_share"}


def test_more_colonies_wanted_than_stands_is_refused_with_the_yards(season):
    season.answers = {"target_colonies": 500}
    with pytest.raises(AnswerFaults, match="your yards have 28 stands"):
        runs.ask(season, who=None, now=NOON)


def test_a_done_run_holds_the_problem_that_was_solved_its_plan_and_its_report(season):
    run = runs.work(leased(season))
    assert run.status == Run.Status.DONE, run.message
    problem, plan, report = problem_of(run.problem), plan_of(run.plan), report_from(run.report)
    assert len(problem.scenarios) == 4
    assert float(report.spend) == pytest.approx(plan.spend, abs=0.005)
    assert (run.leased_until, run.gap_reached) == (None, plan.gap)
    assert run.message == report.headline


def test_each_stage_is_told_on_the_way(season):
    told = []
    runs.work(leased(season), progress=lambda stage, bound=None, gap=None: told.append(stage))
    assert told[0] == "drawing the seasons"
    assert "working out season 4 of 4" in told
    assert told[-1] == "writing down the reasons"


def test_bound_and_gap_are_told_from_the_search_on_to_the_end_of_the_trial(season):
    told = {}

    def progress(stage, bound=None, gap=None):
        told.setdefault(stage, []).append((bound, gap))

    run = runs.work(leased(season, scenarios=21, trial=10, gap=0.02), progress=progress)
    plan = plan_of(run.plan)
    assert all(bound >= plan.objective - 1e-6 for bound, _gap in told["weighing the seasons"])
    after = ("trying the order on fresh seasons", "looking into the future", "writing down the reasons")
    assert all(set(told[stage]) == {(plan.bound, plan.gap)} for stage in after)
    assert max(len(stage) for stage in told) <= Run._meta.get_field("stage").max_length


def test_a_run_that_asks_for_what_this_version_does_not_know_says_so(season):
    run = runs.work(leased(season, solver="abacus"))
    assert run.status == Run.Status.FAILED
    assert "the solver “abacus”, which this version of the planner does not know" in run.message


def test_a_run_with_an_answer_to_a_question_unknown_here_says_so(season):
    run = leased(season)
    run.answers = {"question_of_next_year": 3}
    run = runs.work(run)
    assert (run.status, run.message) == (Run.Status.FAILED, "There is no question “question_of_next_year”.")


def test_a_budget_of_nothing_buys_nothing_and_says_what_that_costs(season):
    run = runs.work(leased(season, budget=Decimal(0)))
    report = report_from(run.report)
    assert (report.lines, report.spend) == ((), 0)
    assert any("without a budget" in sentence for sentence in report.standing.sentences)


def test_books_that_changed_since_fail_the_run_with_a_plain_message(season):
    run = leased(season)
    Offer.objects.update(open_until=outfit.DAY - dt.timedelta(days=1))
    run = runs.work(run)
    assert run.status == Run.Status.FAILED
    assert "load a price list first" in run.message


def test_a_solver_without_an_order_fails_the_run_and_says_why(season, monkeypatch):
    def no_order(problem, **settings):
        from_nothing = {"here_and_now": (), "fees": (), "scenarios": (), "shadow_prices": None}
        return runs.Plan(
            status="infeasible",
            reason="13 feeders must be there and nobody sells them",
            objective=None,
            bound=None,
            gap=None,
            seconds=0.1,
            solver="highs",
            spend=None,
            shadow_prices_withheld="no order",
            **from_nothing,
        )

    monkeypatch.setattr(runs, "solve_apart", no_order)
    run = runs.work(leased(season))
    assert run.status == Run.Status.FAILED
    assert run.message == (
        "No order can give what the season must have: 13 feeders must be there and nobody sells them"
    )


def test_a_waiting_run_is_stopped_at_once(season):
    run = runs.cancel(runs.ask(season, who=None, now=NOON))
    assert (run.status, run.message) == (Run.Status.CANCELLED, runs.STOPPED)
    assert queue.take("test", NOON) is None


def test_a_run_whose_worker_is_gone_is_stopped_at_once(season):
    run = leased(season)
    Run.objects.update(leased_until=NOON)
    run = runs.cancel(run)
    assert (run.status, run.message) == (Run.Status.CANCELLED, runs.STOPPED)


def test_a_run_that_is_over_cannot_be_stopped(db):
    with pytest.raises(AlreadyOver, match="nothing to stop"):
        runs.cancel(made.make_run(status=Run.Status.DONE))


def test_stopping_in_the_midst_of_the_solve_ends_it_and_leaves_no_solver_running(season):
    run = leased(season)
    beat = queue.Beat(run, every_seconds=0)

    def stop_when_solving(stage, bound=None, gap=None):
        beat(stage, bound, gap)
        if stage == "looking for the best order":
            runs.cancel(run)

    run = runs.work(run, progress=stop_when_solving, cancelled=beat.cancelled)
    assert (run.status, run.message, run.report) == (Run.Status.CANCELLED, runs.STOPPED, None)
    assert not children_solving(os.getpid())


def children_solving(parent):
    """Command lines of this process's children that are solvers."""
    found = []
    for entry in Path("/proc").glob("[0-9]*"):
        try:
            words = (entry / "cmdline").read_text().split("\0")
            status = (entry / "status").read_text()
        except OSError:
            continue  # ended meanwhile
        if "planner.solution.child" in words and f"PPid:\t{parent}\n" in status:
            found.append(words)
    return found


def test_a_run_taken_over_by_another_worker_is_not_written_by_the_one_before(season):
    run = leased(season)
    beat = queue.Beat(run, every_seconds=0)
    queue.take("other", NOON + dt.timedelta(hours=1))
    with pytest.raises(RunTakenOver):
        runs.work(run, progress=beat, cancelled=beat.cancelled)
    run.refresh_from_db()
    assert (run.worker, run.status) == ("other", Run.Status.WORKING)


def test_approving_makes_one_order_a_supplier_with_the_reasons(db):
    run = made.make_done_run()
    on = made.DAY + dt.timedelta(days=3)
    orders = runs.approve(run, who=None, on=on)
    assert [order.supplier.code for order in orders] == ["northfork", "sandridge"]
    assert [order.fee_cents for order in orders] == [9500, 0]
    assert {order.placed_on for order in orders} == {on}
    line = orders[0].lines.first()
    assert (line.packs, line.cost_cents) == (12, 85200)
    assert line.why.startswith("Buy 60")
    run.refresh_from_db()
    assert run.approved_at is not None
    assert set(run.orders.all()) == set(orders)


def test_an_order_approved_after_its_last_day_arrives_later_than_it_said(db):
    late = dt.date(2027, 6, 1)
    orders = runs.approve(made.make_done_run(), who=None, on=late)
    assert orders[0].due_on == late + dt.timedelta(weeks=3)


def test_a_run_is_approved_once_only(db):
    run = made.make_done_run()
    runs.approve(run, who=None, on=made.DAY)
    with pytest.raises(AlreadyApproved, match="Nothing was ordered a second time"):
        runs.approve(run, who=None, on=made.DAY)
    assert Order.objects.count() == 2


@pytest.mark.parametrize("status", ["waiting", "working", "failed", "cancelled"])
def test_only_a_done_run_is_approved(db, status):
    with pytest.raises(NotDone, match=status):
        runs.approve(made.make_run(status=status), who=None, on=made.DAY)


def test_a_run_that_buys_nothing_cannot_be_approved(db):
    report = made.make_report(orders=(), spend=Decimal(0))
    with pytest.raises(NothingToOrder):
        runs.approve(made.make_done_run(report=report), who=None, on=made.DAY)


def test_an_offer_that_was_removed_since_is_named_and_nothing_is_ordered(db):
    run = made.make_done_run()
    Offer.objects.filter(code="sr-sugar").delete()
    with pytest.raises(OfferGone, match="sr-sugar"):
        runs.approve(run, who=None, on=made.DAY)
    assert not Order.objects.exists()


def test_a_run_asked_for_before_another_was_approved_is_refused(db):
    early = made.make_done_run(asked_at=timezone.now() - dt.timedelta(hours=1))
    later = made.make_run(early.season, status=Run.Status.DONE, approved_at=timezone.now())
    with pytest.raises(Overtaken, match=f"run {later.pk}"):
        runs.approve(early, who=None, on=made.DAY)


def test_waiting_runs_know_how_many_are_ahead(db):
    first = made.make_run(status=Run.Status.WORKING)
    second = made.make_run(first.season)
    third = made.make_run(first.season)
    assert [runs.ahead_of(run) for run in (first, second, third)] == [0, 1, 2]


def test_the_stored_report_is_plain_json(db):
    report = made.make_report()
    assert report_from(json.loads(json.dumps(runs.report_as_json(report)))) == report
