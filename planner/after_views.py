"""The page of what follows an order: loads, evenings, feed. No price on it: a helper sees the loads of their yards."""

from django.shortcuts import render
from django.views.decorators.http import require_safe

from apiary.rights import yard_codes
from planner.after.sheet import after_page
from planner.order_views import run_of
from planner.plan.json_form import report_from


@require_safe
def run_after(request, pk):
    """What follows the order of a run that is done."""
    run, section = run_and_after(pk)
    page = None if section is None else after_page(section, yard_codes(request.user))
    return render(request, "planner/after.html", {"run": run, "page": page})


def run_and_after(pk):
    """The run and what follows its order; None where it is not done, or from before that was worked out."""
    run = run_of(pk)
    return run, report_from(run.report).after if run.is_done else None
