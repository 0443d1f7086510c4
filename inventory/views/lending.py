"""Gear lent: what is out to whom, lending from a store, and getting it back sound, to mend or not at all.

Each view reads the form, calls one act or question and answers.
"""

from django.shortcuts import get_object_or_404, render
from django.urls import reverse
from django.utils import timezone
from django.views.decorators.http import require_http_methods, require_safe

from apiary.rights import refuse_elsewhere, yards_of
from inventory import ledger
from inventory.forms import BackForm, LendForm
from inventory.gear import Condition
from inventory.loans import lent_out, out_of
from inventory.models import Loan
from inventory.views.answering import ActSheet, answer, ground_of, home_store, leave_to, needs_yards, stocked

SHEET = require_http_methods(["GET", "HEAD", "POST"])

DISEASE = (
    "disease",
    "Gear that leaves your yards and comes back may carry foulbrood and mites. Lend no comb of doubtful hives, and "
    "look at every comb that comes back before it goes near bees; local rules may forbid lending used comb at all.",
)
LEND = ActSheet(
    title="Lend gear",
    verb="Lend",
    template="inventory/lend.html",
    only=lambda row: row.condition != Condition.HELD,
    cautions=(DISEASE,),
)
GET_BACK = ActSheet(
    title="Get gear back", verb="Book", template="inventory/get_back.html", cautions=(DISEASE,)
)


@require_safe
def lent(request):
    rows = lent_out(on=timezone.localdate(), yards=yards_of(request.user))
    pieces = sum(row.number for row in rows)
    page = {"rows": rows, "pieces": f"{pieces:,} out", "lend": reverse("act-lend")}
    return render(request, "inventory/lent.html", page)


@SHEET
@needs_yards
def act_lend(request):
    at = ground_of(request, "source", hidden=("yard",))
    yard = at.chosen("yard")
    source = at.chosen("source") or stocked(yard, request.user)
    form = LendForm(request.POST or None, ground=source, day=at.on, as_of=at.as_of, only=LEND.only)

    def post(told):
        return ledger.lend(source=source, lines=form.lines(), **form.chosen(), **told)

    at, cells = at.settle(source=source.code), [("From the store of", source)]
    return answer(
        request, LEND, form, post, at=at, leave=leave_to(yard) if yard else reverse("lent"), cells=cells
    )


@SHEET
@needs_yards
def act_get_back(request, pk):
    loan = get_object_or_404(Loan.objects.select_related("act"), pk=pk)
    refuse_elsewhere(request.user, loan.act.movements.values_list("source__yard", flat=True))
    at = ground_of(request)
    form = BackForm(request.POST or None, out=out_of(loan), into=home_store(request.user), day=at.on)

    def post(told):
        return ledger.take_back(loan=loan, into=form.cleaned_data["into"], returns=form.returns(), **told)

    due = f"{loan.due_on:%-d %B %Y}" if loan.due_on else "no day agreed"
    cells = [("Lent to", loan.to), ("Lent on", f"{loan.act.day:%-d %B %Y}"), ("Due back", due)]
    return answer(request, GET_BACK, form, post, at=at.settle(), leave=reverse("lent"), cells=cells)
