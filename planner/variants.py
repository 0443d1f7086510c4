"""What-ifs beside a run, runs side by side, and what changed since the run before.

Takes runs; asks what-ifs through runs.py as ordinary runs marked so, takes the answers of one over into its season, and
tells runs as records to planner.comparing. Approves nothing.
"""

from dataclasses import replace
from decimal import Decimal

from django.db import transaction

from planner import runs
from planner.comparing import Told, between, side_by_side
from planner.comparing.side import LEAST, MOST
from planner.errors import AlreadyChecking, NotDone, NothingSupposed, NothingToTakeOver, TooManyBeside
from planner.intake import operation_as_of
from planner.models import Run, Season
from planner.plan.json_form import NotAReport, report_from
from planner.supposing import mediums_of, words_of

ANSWERED = ("answers", "budget")  # what a season can take over


def ask_what_if(run, wanted, *, who, now):
    """Queues the same planning with something supposed: `wanted` as supposing.py takes it. Refused where nothing differs."""
    if not run.is_done:
        raise NotDone(run=run.pk, status=run.get_status_display())
    what_if = supposed_beside(run, wanted)
    if what_if == run.what_if:
        raise NothingSupposed(run=run.pk)
    answers = run.answers | what_if.get("answers", {})
    budget = run.budget
    if "budget" in what_if:
        budget = None if what_if["budget"] is None else Decimal(what_if["budget"])
    settings = replace(runs.settings_of(run), budget=budget, what_if=what_if)
    return runs.queue_up(
        run.season, day=run.day, answers=answers, settings=settings, parent=run, who=who, now=now
    )


@transaction.atomic
def ask_check(run, *, who, now):
    """Queues the check of a done run's beliefs; one at a time. What it finds is written into that run's report."""
    run = Run.objects.select_for_update().get(pk=run.pk)
    if not run.is_done:
        raise NotDone(run=run.pk, status=run.get_status_display())
    if other := check_under_way(run):
        raise AlreadyChecking(run=run.pk, other=other.pk)
    settings = replace(runs.settings_of(run), beliefs=True, what_if={})
    return runs.queue_up(
        run.season, day=run.day, answers=run.answers, settings=settings, parent=run, who=who, now=now
    )


def check_under_way(run):
    """The run that checks this one's beliefs just now, or None."""
    open_ = (Run.Status.WAITING, Run.Status.WORKING)
    return Run.objects.filter(parent=run, what_if={}, status__in=open_).first()


def supposed_beside(run, wanted):
    """All that is supposed: the run's own suppositions and those wanted, without what is as it was."""
    found = {key: value for key, value in run.what_if.items() if key != "names"}
    if "budget" in wanted:
        budget = None if wanted["budget"] is None else Decimal(wanted["budget"])
        if budget != run.budget:
            found["budget"] = None if budget is None else str(budget)
    answers = {
        key: value for key, value in wanted.get("answers", {}).items() if value != run.answers.get(key)
    }
    prices = {code: percent for code, percent in wanted.get("prices", {}).items() if percent}
    for key, value in (("answers", answers), ("prices", prices)):
        if value:
            found[key] = found.get(key, {}) | value
    if without := sorted({*found.get("without", ()), *wanted.get("without", ())}):
        found["without"] = without
    for key in ("home",):
        if wanted.get(key):
            found[key] = wanted[key]
    if found and (found.get("prices") or found.get("without")):
        found["names"] = supplier_names(run)
    return found


def supplier_names(run):
    """code -> name of the suppliers there are."""
    return {supplier.code: supplier.name for supplier in operation_as_of(run.day, begun=run.begun).suppliers}


def mediums(run):
    """What an outfit of mediums supposes: the hive set new hives are, and supers of the same boxes; None: no such set."""
    return mediums_of(operation_as_of(run.day, begun=run.begun), run.answers)


@transaction.atomic
def take_over(run):
    """Makes a what-if's answers and budget the season's own; prices and the like are no answers. Gives the season."""
    season = Season.objects.select_for_update().get(pk=run.season_id)
    if not any(key in run.what_if for key in ANSWERED):
        raise NothingToTakeOver(run=run.pk)
    season.answers = season.answers | run.what_if.get("answers", {})
    if "budget" in run.what_if:
        budget = run.what_if["budget"]
        season.budget_cents = None if budget is None else int(Decimal(budget) * 100)
    season.save(update_fields=["answers", "budget_cents"])
    return season


def told(run):
    """A done run as it is compared."""
    return Told(
        name=f"run {run.pk}",
        report=report_from(run.report),
        books=run.books,
        supposed=words_of(run.what_if),
    )


def run_before(run):
    """What a run follows on: a what-if its parent, a run in earnest the last one of its season that was done."""
    if run.parent_id:
        return run.parent
    earlier = Run.objects.filter(season=run.season_id, parent=None, status=Run.Status.DONE, pk__lt=run.pk)
    return earlier.first()


def family(run):
    """The run in earnest a what-if goes back to, and all that was supposed beside it, to be laid side by side."""
    while run.parent_id:
        run = run.parent
    found, asked = [run], [run.pk]
    while asked:
        beside_these = list(Run.objects.with_orders().filter(parent__in=asked).order_by("pk"))
        found += beside_these
        asked = [each.pk for each in beside_these]
    return found


def changes_since(run):
    """What changed since the run before, or None where there is none that can still be read."""
    before = run_before(run)
    if before is None or not before.is_done:
        return None
    try:
        return between(told(before), told(run))
    except NotAReport:
        return None


def beside(found):
    """Two to four done runs as one table; others are refused."""
    if not LEAST <= len(found) <= MOST:
        raise TooManyBeside(count=len(found))
    for run in found:
        if not run.is_done:
            raise NotDone(run=run.pk, status=run.get_status_display())
    return side_by_side([told(run) for run in found])
