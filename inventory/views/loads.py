"""Sheets of the road: a load hauled to one yard or several, gear lent, and gear got back.

Each view finds where it is done, reads the form, calls one act and answers.
"""

from urllib.parse import urlencode

from django.urls import reverse
from django.views.decorators.http import require_http_methods

from inventory import ledger
from inventory.forms import HaulForm
from inventory.views.answering import (
    LIFTING,
    ActSheet,
    answer,
    ground_of,
    home_store,
    leave_to,
    needs_yards,
    stocked,
)

SHEET = require_http_methods(["GET", "HEAD", "POST"])

HAUL = ActSheet(
    title="Haul a load",
    verb="Haul",
    rows="Load",
    template="inventory/haul.html",
    row="inventory/haul_row.html",
    nothing="The book has nothing in this store. Choose another place to load from, or add what your hand holds.",
    cautions=(
        LIFTING,
        (
            "loads",
            "Heavy stacks low and over the axle. Strap every stack across and along, screen or close entrances, and "
            "keep within what the door plate allows, people and fuel counted. Stop after the first miles and pull "
            "the straps again.",
        ),
    ),
)
HELD = (
    "disease",
    "Some of what lies here is held back. Held-back gear on the road spreads what it may carry: local rules often "
    "forbid to move it without the inspector's word. Ask first, and keep it bagged or closed.",
)


@SHEET
@needs_yards
def act_move(request):
    at = ground_of(request, "source", "stops", hidden=("yard", "target"))
    yard, stops = at.chosen("yard"), at.chosen("stops") or []
    source = at.chosen("source") or stocked(yard, request.user)
    ends = (*stops, at.chosen("target"), yard, home_store(request.user))
    target = next((end for end in ends if end and end != source), None)
    form = HaulForm(
        request.POST or None, ground=source, stops=stops, target=target, day=at.on, as_of=at.as_of
    )

    def post(told):
        return ledger.haul(source=source, drops=form.drops(), **told)

    cells = [
        ("From the store of", source),
        *([("Dropped at", ", ".join(map(str, stops)))] if form.stops else []),
    ]
    at, leave = at.settle(source=source.code, stops=[stop.code for stop in stops]), leave_to(yard, source)
    page = {"cells": cells, "cautions": [HELD] if form.has_held else []}
    page["print_address"] = _print_address(source, stops)
    return answer(request, HAUL, form, post, at=at, leave=leave, **page)


def _print_address(source, stops):
    """Where the load is sent to be printed as it is typed: nothing is booked there."""
    where = [("source", source.code), *(("stops", stop.code) for stop in stops)]
    return f"{reverse('print-haul')}?{urlencode(where)}"
