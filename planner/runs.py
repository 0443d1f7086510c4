"""The whole planning of a season on one screen, and the only writer of Run.

Takes a season and what was asked of it; gives an order with its problem, plan and report, and, once approved,
purchase orders. Does not compute: each stage takes the record of the one before. The lease is queue.py's.
"""

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from functools import partial

from django.db import transaction
from django.utils import timezone
from django.utils.text import slugify

from inventory.models import Offer, Supplier
from inventory.orders import OrderItem, place_order
from planner.comparing import books_of
from planner.errors import (
    AlreadyApproved,
    AlreadyOver,
    DayBeforeSeason,
    DayToCome,
    FreeOffers,
    NoColonies,
    NoOffers,
    NoOrderFound,
    NoOrdersMade,
    NotDone,
    NothingToOrder,
    OfferGone,
    OnlyChecks,
    Overtaken,
    Refused,
    RunStopped,
    SeasonOver,
    Supposed,
    UnknownSetting,
)
from planner.following import followed
from planner.intake import operation_as_of
from planner.models import Run
from planner.plan import Report, report_of
from planner.plan.json_form import as_json as report_as_json
from planner.plan.json_form import report_from
from planner.plan.words import listed
from planner.projection import project
from planner.queue import STOPPED, is_abandoned
from planner.rechecking import checked_report
from planner.requirement import Unpriced, sizing_problem
from planner.season.assumptions import WEEKS, AnswerFaults, Assumptions, assumptions_of
from planner.season.operation import Operation
from planner.season.scenarios import draw
from planner.sizing.faults import Faults
from planner.sizing.records import Problem
from planner.sizing.writing import as_json as problem_as_json
from planner.solution import Cancelled, Plan, solve_apart
from planner.solution.plan_json import as_json as plan_as_json
from planner.solution.solving import SOLVERS
from planner.supposing import suppose, words_of
from planner.trying import Tried

NEARLY_ALL = 0.9
SEARCH = "looking for the best order"
SEARCH_STAGES = {
    "building": "setting up the search",
    "solving": SEARCH,
    "pricing": "asking what more would earn",
}

PLAIN_REFUSALS = (Refused, AnswerFaults, Faults, Unpriced)


@dataclass(frozen=True, kw_only=True)
class Settings:
    """How hard to look: seasons drawn, their seed, what may be spent, how long the solver has; then the trial: how many
    fresh seasons (0: none), its seconds, the keeper's usual order as packs by offer, and the bad-years curve."""

    scenarios: int = 100
    seed: int = 1
    budget: Decimal | None = None
    solver: str = "highs"
    gap: float = 0.001
    seconds: float = 120.0
    trial: int = 300
    trial_seconds: float = 75.0
    usual_order: Mapping[str, int] = field(default_factory=dict)
    bad_years_curve: bool = False
    beliefs: bool = False
    beliefs_seconds: float = 90.0  # for the check of the beliefs in all
    nearby_seconds: float = 45.0  # for a pack more or fewer and other budgets; 0: not asked
    begun: dt.date | None = None  # first day of the season, where it is planned again on a later day
    what_if: Mapping = field(default_factory=dict)  # what is supposed of prices, suppliers and hives


@dataclass(frozen=True, kw_only=True)
class Outcome:
    operation: Operation
    assumptions: Assumptions
    problem: Problem
    plan: Plan
    report: Report


def quiet(stage, bound=None, gap=None):
    """Progress told to nobody."""


def never():
    return False


def plan_order(day, answers, settings, *, progress=quiet, cancelled=never):
    """The pipeline: the books of the day and the keeper's answers in, the order with its reasons out."""
    operation, assumptions = season_facts(day, answers, begun=settings.begun, what_if=settings.what_if)
    progress("drawing the seasons")
    scenarios = draw(operation, assumptions, count=settings.scenarios, seed=settings.seed)
    projections = []
    for number, scenario in enumerate(scenarios, 1):
        progress(f"working out season {number} of {len(scenarios)}")
        projections.append(project(operation, assumptions, scenario))
    progress("writing down what the seasons ask for")
    problem = sizing_problem(operation, assumptions, projections, budget=settings.budget)
    progress(SEARCH)
    solve = partial(solve_apart, solver=settings.solver, cancelled=cancelled)
    plan = solve(
        problem,
        gap=settings.gap,
        seconds=settings.seconds,
        progress=lambda stage, bound, gap: progress(SEARCH_STAGES.get(stage, stage), bound, gap),
    )
    if not plan.is_order:
        raise NoOrderFound(status=plan.status, reason=plan.reason)
    progress = partial(_with_proof, progress, plan)
    tried = Tried(
        operation=operation,
        assumptions=assumptions,
        problem=problem,
        plan=plan,
        settings=settings,
        solve=solve,
        progress=progress,
    )
    nearby = tried.next_door(cancelled) if settings.nearby_seconds else None
    others = () if settings.trial else tried.rivals()
    freely = tried.without_budget() if held_back(problem, plan) else None
    trial = tried.on_fresh_seasons(scenarios) if settings.trial else None
    curve = tried.bad_years_curve() if settings.bad_years_curve else None
    checked = tried.beliefs(cancelled) if settings.beliefs else None
    after = followed(tried, projections)
    progress("writing down the reasons")
    report = report_of(
        operation,
        assumptions,
        problem,
        plan,
        rivals=others,
        without_budget=freely,
        trial=trial,
        bad_years=curve,
        beliefs=checked,
        nearby=nearby,
        after=after,
    )
    return Outcome(operation=operation, assumptions=assumptions, problem=problem, plan=plan, report=report)


def _with_proof(progress, plan, stage, bound=None, gap=None):
    """Tells what comes after the search together with what the search proved."""
    progress(stage, plan.bound, plan.gap)


def held_back(problem, plan):
    """Whether the budget is near enough to its end that more of it might buy more."""
    return problem.budget is not None and plan.spend >= NEARLY_ALL * problem.budget


def season_facts(day, answers, *, begun=None, what_if=None):
    """The operation and the checked assumptions, or a refusal that says what is missing. `begun`: first day of the
    season, where `day` is later; `what_if`: supposed of the books."""
    operation = suppose(operation_as_of(day, begun=begun), what_if or {})
    if not operation.colonies:
        raise NoColonies(day=day)
    held = [offer for offer in operation.offers if offer.open_until is None or offer.open_until >= day]
    if not held:
        raise NoOffers(day=day)
    if free := [offer.name for offer in held if any(price == 0 for _from, price in offer.prices)]:
        raise FreeOffers(offers=listed(free))
    told = assumptions_of(answers, start=day, region=operation.region, operation=operation, begun=begun)
    return operation, told


def ask(season, *, who, now, day=None, **wanted):
    """Puts a run in the queue. Faulty answers, no colonies and no offers are refused here, before any wait.

    `day`: a later day of the season, to plan again from the books of its evening."""
    day = season.starts_on if day is None else checked_day(season, day, today=timezone.localdate(now))
    usual = {"budget": season.budget, "usual_order": season.usual_order, "begun": season.starts_on}
    return queue_up(
        season, day=day, answers=season.answers, settings=Settings(**{**usual, **wanted}), who=who, now=now
    )


def queue_up(season, *, day, answers, settings, who, now, parent=None):
    """The row of a run; `parent`: the run a what-if stands beside."""
    season_facts(day, answers, begun=settings.begun, what_if=settings.what_if)
    return Run.objects.create(
        season=season,
        day=day,
        begun=settings.begun,
        parent=parent,
        what_if=dict(settings.what_if),
        answers=answers,
        asked_at=now,
        asked_by=who,
        scenarios=settings.scenarios,
        seed=settings.seed,
        budget_cents=None if settings.budget is None else int(settings.budget * 100),
        solver=settings.solver,
        gap=settings.gap,
        seconds=settings.seconds,
        trial=settings.trial,
        usual_order=settings.usual_order,
        bad_years_curve=settings.bad_years_curve,
        beliefs=settings.beliefs,
    )


def checked_day(season, day, *, today):
    """A day the season can be planned again on: not before its first, not to come, not after its 52 weeks."""
    if day < season.starts_on:
        raise DayBeforeSeason(day=day, season=season.name, starts_on=season.starts_on)
    if day > max(today, season.starts_on):
        raise DayToCome(day=day, today=today)
    if day >= season.starts_on + dt.timedelta(weeks=WEEKS):
        raise SeasonOver(
            day=day, season=season.name, last=season.starts_on + dt.timedelta(weeks=WEEKS, days=-1)
        )
    return day


def ahead_of(run):
    """How many runs are worked before this waiting one."""
    if run.status != Run.Status.WAITING:
        return 0
    return Run.objects.filter(status__in=[Run.Status.WAITING, Run.Status.WORKING], pk__lt=run.pk).count()


def settings_of(run):
    """What was asked of a run, or a refusal where a newer program asked what this one does not know."""
    if run.solver not in SOLVERS:
        raise UnknownSetting(run=run.pk, solver=run.solver)
    return Settings(
        scenarios=run.scenarios,
        seed=run.seed,
        budget=run.budget,
        solver=run.solver,
        gap=run.gap,
        seconds=run.seconds,
        trial=run.trial,
        usual_order=run.usual_order,
        bad_years_curve=run.bad_years_curve,
        beliefs=run.beliefs,
        begun=run.begun,
        what_if=run.what_if,
    )


def work(run, *, progress=quiet, cancelled=never):
    """Plans a leased run and writes what came of it. A bug is not caught: the lease runs out, it is tried again."""
    try:
        if run.only_checks:
            return _hand_over(run, _checked(run.parent, progress, cancelled))
        outcome = plan_order(run.day, run.answers, settings_of(run), progress=progress, cancelled=cancelled)
    except (RunStopped, Cancelled):
        return _finish(run, Run.Status.CANCELLED, message=STOPPED)
    except PLAIN_REFUSALS as refusal:
        return _finish(run, Run.Status.FAILED, message=sentence_of(refusal))
    return _finish(
        run,
        Run.Status.DONE,
        message=outcome.report.headline,
        gap_reached=outcome.plan.gap,
        bound=outcome.plan.bound,
        problem=problem_as_json(outcome.problem),
        plan=plan_as_json(outcome.plan),
        report=report_as_json(outcome.report),
        books=books_of(outcome.operation, outcome.assumptions),
    )


def _checked(run, progress, cancelled):
    """The report of a done run with its beliefs checked."""
    operation, told = season_facts(run.day, run.answers, begun=run.begun, what_if=run.what_if)
    return checked_report(run, operation, told, progress=progress, cancelled=cancelled)


@transaction.atomic
def _hand_over(run, report):
    """Ends a run that only checks, and writes the check into the report of the run it is of."""
    run = _finish(run, Run.Status.DONE, message=f"The beliefs of run {run.parent_id} are checked.")
    if run.status == Run.Status.DONE:
        Run.objects.filter(pk=run.parent_id).update(report=report_as_json(report))
    return run


def sentence_of(refusal):
    """A refusal in plain words, all its faults in one text."""
    messages = getattr(refusal, "messages", None)
    if messages is None:
        return str(refusal)
    return "\n".join(messages.values() if isinstance(messages, dict) else messages)


def _finish(run, status, **found):
    """Writes only where the run is still this worker's; gives it as it now stands."""
    Run.objects.filter(pk=run.pk, status=Run.Status.WORKING, worker=run.worker, attempts=run.attempts).update(
        status=status, finished_at=timezone.now(), leased_until=None, stage="", **found
    )
    return Run.objects.select_related("season").get(pk=run.pk)


@transaction.atomic
def cancel(run):
    """Stops a run: one that waits or whose worker is gone at once, a working one at its next breath."""
    run = Run.objects.select_for_update().get(pk=run.pk)
    if run.is_over:
        raise AlreadyOver(run=run.pk, status=run.get_status_display())
    run.cancel, now = True, timezone.now()
    if run.status == Run.Status.WAITING or is_abandoned(run, now):
        run.status, run.message, run.finished_at = Run.Status.CANCELLED, STOPPED, now
    run.save(update_fields=["cancel", "status", "message", "finished_at"])
    return run


@transaction.atomic
def approve(run, *, who, on):
    """Makes the purchase orders of a done run, one a supplier, once; gives them."""
    run = Run.objects.select_for_update().get(pk=run.pk)
    report = approvable(run)
    offers = Offer.objects.in_bulk([line.offer for line in report.lines], field_name="code")
    if gone := [line.offer for line in report.lines if line.offer not in offers]:
        raise OfferGone(offers=", ".join(gone))
    orders = [_place(run, order, offers, on=on) for order in report.orders]
    run.approved_at, run.approved_by = timezone.now(), who
    run.save(update_fields=["approved_at", "approved_by"])
    run.orders.set(orders)
    return orders


def orders_of(run):
    """The purchase orders made of a run, or the refusal where none was made."""
    orders = list(run.orders.select_related("supplier").order_by("pk"))
    if not orders:
        raise NoOrdersMade(run=run.pk)
    return orders


def approvable(run):
    """The report of a run that may be approved, or the refusal that says why it may not."""
    if run.approved_at:
        raise AlreadyApproved(run=run.pk, day=run.approved_at.date())
    if run.only_checks:
        raise OnlyChecks(run=run.pk, parent=run.parent_id)
    if run.parent_id:
        raise Supposed(run=run.pk, what=words_of(run.what_if))
    if not run.is_done:
        raise NotDone(run=run.pk, status=run.get_status_display())
    later = Run.objects.filter(season=run.season, approved_at__gt=run.asked_at).first()
    if later:
        raise Overtaken(run=run.pk, other=later.pk)
    report = report_from(run.report)
    if not report.lines:
        raise NothingToOrder(run=run.pk)
    return report


def _place(run, order, offers, *, on):
    """One purchase order; a supplier ordered from in several weeks has one a week. Late approval, late arrival."""
    lead_time = order.due_on - order.order_by
    return place_order(
        Supplier.objects.get(code=order.supplier),
        [
            OrderItem(offer=offers[line.offer], packs=line.packs, cost=line.cost, why=line.why.text)
            for line in order.lines
        ],
        placed_on=on,
        due_on=max(order.due_on, on + lead_time),
        fee=order.fee,
        reference=f"{slugify(run.season.name)[:20]}-{run.pk}-{order.supplier}-{order.period}"[:60],
    )
