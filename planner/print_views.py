"""Planned loads on paper: a leaf for each, out and home, to tick as the truck is loaded. No price stands on it.

Takes a run and, where told, the first day of a week; answers with inventory's page of leaves. Books nothing.
"""

from django.urls import reverse
from django.utils.formats import date_format
from django.views.decorators.http import require_safe

from apiary.rights import yard_codes
from inventory.field_sheets.leaves import Leaf
from inventory.views.printing import printed
from planner.after.sheet import load_row
from planner.after_views import run_and_after


@require_safe
def run_after_print(request, pk):
    """The loads of a run that is done, of one week or of all, to the yards that are theirs."""
    _run, section = run_and_after(pk)
    week, yards = request.GET.get("week", ""), yard_codes(request.user)
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
    legs = (("Out", "Dropped", row.out, row.out_sum), ("Home", "Unloaded", row.home, row.home_sum))
    return Leaf(
        kind=f"Load {load.number}",
        name=load.yard_name,
        address=address,
        opens="the loads",
        body="planner/print_load.html",
        cells=(("Week of", date_format(load.day, "D j M Y")), ("Trip", row.rides)),
        told={"ways": [leg for leg in legs if leg[2]]},
    )
