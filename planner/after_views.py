"""The page of what follows an order: loads, evenings, feed. No price on it: a helper sees the loads of their yards."""

from django.shortcuts import get_object_or_404, render
from django.views.decorators.http import require_safe

from apiary.rights import grounds, yards_of
from planner.after.sheet import after_page
from planner.models import Run
from planner.plan.json_form import report_from


@require_safe
def run_after(request, pk):
    """What follows the order of a run that is done."""
    run = get_object_or_404(Run.objects.select_related("season"), pk=pk)
    section = report_from(run.report).after if run.is_done else None
    given = yards_of(request.user)
    yards = None if given is None else set(grounds(request.user).values_list("code", flat=True))
    page = None if section is None else after_page(section, yards)
    return render(request, "planner/after.html", {"run": run, "page": page})
