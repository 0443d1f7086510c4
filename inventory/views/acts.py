"""Sheets of acts in the field: place on a colony, take off.

Each view finds where it is done, reads the form, calls one act and answers.
"""

from django.views.decorators.http import require_http_methods

from apiary.models import Colony
from inventory import ledger
from inventory.forms import LinesForm, MoveForm
from inventory.pieces import fitting, rows_at
from inventory.views.answering import (
    LIFTING,
    SMOKE,
    ActSheet,
    answer,
    ground_of,
    leave_to,
    needs_yards,
    stocked,
    which_colony,
)

SHEET = require_http_methods(["GET", "HEAD", "POST"])

PLACE = ActSheet(
    title="Place gear",
    verb="Place",
    template="inventory/place.html",
    nothing="The book has nothing in this store that fits. Choose another store, or add what your hand holds.",
    cautions=(LIFTING, SMOKE),
)
TAKE_OFF = ActSheet(
    title="Take gear off",
    verb="Take off",
    template="inventory/move.html",
    nothing="The book has nothing on this colony. Add what your hand holds.",
    cautions=(LIFTING, SMOKE),
)


@SHEET
@needs_yards
def act_place(request):
    at = ground_of(request, "colony", "source", hidden=("yard",))
    colony = at.chosen("colony")
    if colony is None:
        return which_colony(request, PLACE, at, Colony.objects.alive(on=at.on))
    source = at.chosen("source") or stocked(colony.yard, request.user)
    fit, why_not = fitting(rows_at(source, as_of=at.as_of), colony)
    form = LinesForm(
        request.POST or None, ground=source, day=at.on, as_of=at.as_of, only=lambda row: row in fit
    )

    def post(told):
        return ledger.place(source=source, colony=colony, lines=form.lines(), **told)

    cells = [("Colony", colony), ("From the store of", source)]
    at, leave = at.settle(source=source.code), leave_to(colony)
    return answer(request, PLACE, form, post, at=at, leave=leave, cells=cells, colony=colony, why_not=why_not)


@SHEET
@needs_yards
def act_take_off(request):
    at = ground_of(request, "colony", hidden=("yard", "target"))
    colony = at.chosen("colony")
    if colony is None:
        return which_colony(request, TAKE_OFF, at, Colony.objects.alive(on=at.on))
    target = at.chosen("target") or colony.yard
    form = MoveForm(request.POST or None, ground=colony, target=target, day=at.on, as_of=at.as_of)

    def post(told):
        return ledger.take_off(colony=colony, target=form.cleaned_data["target"], lines=form.lines(), **told)

    cells = [("Colony", colony), ("Yard", colony.yard)]
    return answer(request, TAKE_OFF, form, post, at=at.settle(), leave=leave_to(colony), cells=cells)
