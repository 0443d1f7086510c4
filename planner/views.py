"""The Season pages: seasons with their answers, a run and its progress.

Each view reads its form, calls one act or question and answers; refusals of the trade are shown as messages.
"""

from django.contrib import messages
from django.db.models import Prefetch
from django.shortcuts import get_object_or_404, redirect, render
from django.urls import reverse
from django.utils import timezone
from django.views.decorators.http import require_POST, require_safe

from planner import runs
from planner.errors import Refused
from planner.forms import AnswersForm, RunForm, SeasonForm
from planner.models import Run, Season
from planner.order_views import run_of
from planner.usual_form import UsualOrderForm
from planner.what_if_form import AgainForm


def seasons(request):
    """All seasons with their last run, and a form to begin one."""
    form = SeasonForm(request.POST or None)
    if request.method == "POST" and form.is_valid():
        season = form.save()
        messages.success(request, f"{season.name} begun. Answer what you know, then work out the order.")
        return redirect("season-answers", season.pk)
    rows = Season.objects.prefetch_related(Prefetch("runs", Run.objects.in_earnest()))
    return render(request, "planner/seasons.html", {"form": form, "seasons": rows})


def season_answers(request, pk):
    """The keeper's answers for one season, each with its usual value and where that comes from."""
    season = get_object_or_404(Season, pk=pk)
    about = SeasonForm(request.POST or None, instance=season)
    form = AnswersForm(season, request.POST or None)
    if request.method == "POST" and about.is_valid() and form.is_valid():
        about.save()
        form.save()
        messages.success(request, "Answers kept.")
        return redirect("season-answers", season.pk)
    status = 422 if about.errors or form.errors else 200
    return render(
        request, "planner/season.html", _season_sheet(season, about=about, form=form), status=status
    )


@require_POST
def season_usual(request, pk):
    """Keeps what the keeper would have ordered."""
    season = get_object_or_404(Season, pk=pk)
    form = UsualOrderForm(season, request.POST)
    if not form.is_valid():
        return render(request, "planner/season.html", _season_sheet(season, usual=form), status=422)
    form.save()
    messages.success(request, "Your usual order is kept. The next run is tried against it.")
    return redirect("season-answers", season.pk)


@require_POST
def season_run(request, pk):
    """Puts a run of the season in the queue."""
    season = get_object_or_404(Season, pk=pk)
    form = RunForm(request.POST)
    if not form.is_valid():
        return render(request, "planner/season.html", _season_sheet(season, run_form=form), status=422)
    try:
        run = runs.ask(season, who=request.user, now=timezone.now(), **form.cleaned_data)
    except runs.PLAIN_REFUSALS as refusal:
        messages.error(request, runs.sentence_of(refusal))
        return redirect("season-answers", season.pk)
    return redirect("run", run.pk)


@require_safe
def run_page(request, pk):
    """How far a run is; once done, its order."""
    run = run_of(pk)
    if run.is_done:
        return redirect("run-order", run.pk)
    if run.only_checks and run.status == Run.Status.DONE:
        return redirect(f"{reverse('run-order', args=[run.parent_id])}#beliefs")
    return render(request, "planner/run.html", {"run": run, "ahead": runs.ahead_of(run)})


@require_safe
def run_progress(request, pk):
    """The part of a run's page that changes; without scripts, the page itself."""
    run = run_of(pk)
    if not request.htmx:
        return redirect("run", run.pk)
    answer = render(request, "planner/progress.html", {"run": run, "ahead": runs.ahead_of(run)})
    if run.is_over:
        answer["HX-Redirect"] = reverse("run", args=[run.pk])
    return answer


@require_POST
def run_cancel(request, pk):
    """Stops a run."""
    run = run_of(pk)
    try:
        runs.cancel(run)
    except Refused as refusal:
        messages.error(request, str(refusal))
    return redirect("run", run.pk)


def _season_sheet(season, *, about=None, form=None, run_form=None, usual=None):
    today = timezone.localdate()
    return {
        "season": season,
        "about": about or SeasonForm(instance=season),
        "form": form or AnswersForm(season),
        "run_form": run_form or RunForm(),
        "usual": usual or UsualOrderForm(season),
        "again": AgainForm(initial={"day": today}) if season.is_under_way(today) else None,
        "runs": season.runs.with_orders()[:12],
    }
