"""Planned loads on paper: a leaf for each, out and home, to tick as the truck is loaded. No price stands on it.

Takes a run and, where told, the first day of a week; answers with inventory's page of leaves. Books nothing.
"""

from django.shortcuts import get_object_or_404
from django.urls import reverse
from django.utils.formats import date_format
from django.views.decorators.http import require_safe

from apiary.rights import grounds, yards_of
from inventory.field_sheets.leaves import Leaf
from inventory.views.printing import printed
from planner.after.sheet import line_words, load_row
from planner.models import Run
from planner.plan.json_form import report_from


@require_safe
def run_after_print(request, pk):
    """The loads of a run that is done, of one week or of all, to the yards that are theirs."""
    run = get_object_or_404(Run.objects.select_related("season"), pk=pk)
    section = report_from(run.report).after if run.is_done else None
    week = request.GET.get("week", "")
    yards = (
        None if yards_of(request.user) is None else set(grounds(request.user).values_list("code", flat=True))
    )
    loads = [
        load
        for load in (section.loads if section else ())
        if (yards is None or load.yard in yards) and week in ("", load.day.isoformat())
    ]
    address = request.build_absolute_uri(reverse("run-after", args=[pk]))
    leaves = [load_leaf(section, load, address) for load in loads]
    return printed(request, leaves, name="Loads to print", leave=reverse("run-after", args=[pk]))


def load_leaf(section, load, address):
    row = load_row(section, load)
    legs = (("Out", "Dropped", load.out, row.out_sum), ("Home", "Unloaded", load.home, row.home_sum))
    ways = [(way, done, lines_of(leg), told) for way, done, leg, told in legs if leg.carried]
    return Leaf(
        kind=f"Load {load.number}",
        name=load.yard_name,
        address=address,
        opens="the loads",
        body="planner/print_load.html",
        cells=(("Week of", date_format(load.day, "D j M Y")), ("Trip", row.rides)),
        told={"ways": ways},
    )


def lines_of(leg):
    return [line_words(line) for line in leg.carried]
