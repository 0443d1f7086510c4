"""Sheets of a colony that is no more: what became of it, and its hive taken apart."""

from django.shortcuts import get_object_or_404, redirect
from django.urls import reverse
from django.views.decorators.http import require_http_methods

from apiary.models import Colony
from inventory import ledger
from inventory.forms import EndForm, SalvageForm
from inventory.stock import ended_with_gear
from inventory.views.answering import (
    ActSheet,
    answer,
    ground_of,
    home_store,
    leave_to,
    needs_yards,
    which_colony,
)
from inventory.yardwork.ending import end_colonies

SHEET = require_http_methods(["GET", "HEAD", "POST"])

SALVAGE = ActSheet(
    title="Salvage a hive",
    verb="Salvage",
    rows="Booked and found",
    template="inventory/salvage.html",
    row="inventory/salvage_row.html",
    tells="",
    nothing="The book has nothing on this colony. Add what your hand holds.",
    lead="Colonies that were sold, united or lost and still have gear booked on them. One found dead is worked as a deadout.",
    cautions=(
        (
            "close the hive first",
            "Close the entrance against robbing before anything else: robbers carry home whatever killed it. "
            "Freezing is care against wax moth, never against foulbrood. Honey of a deadout is never for sale.",
        ),
    ),
)
END = ActSheet(title="A colony that is no more", verb="Write down the end of", template="inventory/end.html")


@SHEET
@needs_yards
def act_salvage(request):
    at = ground_of(request, "colony", hidden=("yard", "target"))
    colony = at.chosen("colony")
    if colony is None:
        others = ended_with_gear(on=at.on).exclude(ended_why=Colony.Ended.DIED)
        return which_colony(request, SALVAGE, at, others)
    if colony.ended_on is None:
        return redirect(reverse("act-end", args=[colony.pk]))
    if colony.ended_why == Colony.Ended.DIED:
        return redirect(f"{reverse('act-deadout')}?colony={colony.pk}&day={at.on:%Y-%m-%d}")
    into = at.chosen("target") or home_store(request.user)
    form = SalvageForm(request.POST or None, ground=colony, into=into, day=at.on, as_of=at.as_of)

    def post(told):
        return ledger.salvage(colony=colony, into=form.cleaned_data["into"], pieces=form.pieces(), **told)

    cells = [("Colony", colony), ("Yard", colony.yard)]
    return answer(
        request, SALVAGE, form, post, at=at.settle(), leave=leave_to(colony.yard), cells=cells, colony=colony
    )


@SHEET
def act_end(request, pk):
    """What became of a colony; then its hive can be salvaged."""
    colony = get_object_or_404(Colony.objects.select_related("yard"), pk=pk)
    at = ground_of(request)
    form = EndForm(request.POST or None, day=at.on)

    def post(told):
        return end_colonies(colonies=[colony], why=form.cleaned_data["why"], **told)

    def then(act):
        page = reverse("act-deadout" if form.cleaned_data["why"] == Colony.Ended.DIED else "act-salvage")
        return f"{page}?colony={colony.pk}&day={act.day}"

    cells, leave = [("Colony", colony), ("Yard", colony.yard)], leave_to(colony)
    return answer(
        request, END, form, post, at=at.settle(), leave=leave, cells=cells, then=then, colony=colony
    )
