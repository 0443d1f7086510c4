"""Planning again and what-ifs: a later day asked for, something supposed beside a run, runs side by side.

Each view reads its form, calls one act or question and answers; refusals of the trade are shown as messages.
"""

from django.contrib import messages
from django.shortcuts import get_object_or_404, redirect, render
from django.utils import timezone
from django.views.decorators.http import require_POST, require_safe

from planner import runs, variants
from planner.errors import NotDone, Refused
from planner.models import Run, Season
from planner.what_if_form import AgainForm, WhatIfForm


@require_POST
def season_again(request, pk):
    """Plans the season again with the books of a later day."""
    season = get_object_or_404(Season, pk=pk)
    form = AgainForm(request.POST)
    if not form.is_valid():
        messages.error(request, f"The day: {' '.join(map(str, form.errors['day']))}")
        return redirect("season-answers", season.pk)
    try:
        run = runs.ask(season, who=request.user, now=timezone.now(), day=form.cleaned_data["day"])
    except runs.PLAIN_REFUSALS as refusal:
        messages.error(request, runs.sentence_of(refusal))
        return redirect("season-answers", season.pk)
    return redirect("run", run.pk)


def run_what_if(request, pk):
    """Supposes something else of a done run and queues it beside; lists what was supposed before."""
    run = get_object_or_404(Run.objects.select_related("season"), pk=pk)
    if not run.is_done:
        messages.error(request, str(NotDone(run=run.pk, status=run.get_status_display())))
        return redirect("run", run.pk)
    form = WhatIfForm(run, request.POST if request.method == "POST" else None)
    if request.method == "POST" and form.is_valid():
        try:
            wanted = form.cleaned_data["wanted"]
            asked = variants.ask_what_if(run, wanted, who=request.user, now=timezone.now())
        except runs.PLAIN_REFUSALS as refusal:
            form.add_error(None, runs.sentence_of(refusal))
        else:
            return redirect("run", asked.pk)
    status = 422 if form.errors else 200
    found = {"run": run, "form": form, "beside": variants.family(run)}
    return render(request, "planner/what_if.html", found, status=status)


@require_POST
def run_beliefs(request, pk):
    """Queues the check of a done run's beliefs."""
    run = get_object_or_404(Run, pk=pk)
    try:
        asked = variants.ask_check(run, who=request.user, now=timezone.now())
    except runs.PLAIN_REFUSALS as refusal:
        messages.error(request, runs.sentence_of(refusal))
        return redirect("run", run.pk)
    return redirect("run", asked.pk)


@require_POST
def run_take_over(request, pk):
    """Makes the answers of a what-if the season's own."""
    run = get_object_or_404(Run.objects.select_related("season"), pk=pk)
    try:
        variants.take_over(run)
    except Refused as refusal:
        messages.error(request, str(refusal))
        return redirect("run-order", run.pk)
    messages.success(request, "Taken over. Work the order out again: only that run can be approved.")
    return redirect("season-answers", run.season_id)


@require_safe
def runs_beside(request):
    """Two to four runs side by side."""
    chosen = [pk for pk in request.GET.getlist("run") if pk.isdecimal()]
    found = list(Run.objects.filter(pk__in=chosen).order_by("pk"))
    try:
        page = variants.beside(found)
    except Refused as refusal:
        messages.error(request, str(refusal))
        return redirect("run-what-if", found[0].pk) if found else redirect("season")
    return render(request, "planner/beside.html", {"page": page, "runs": found, "season": found[0].season})
