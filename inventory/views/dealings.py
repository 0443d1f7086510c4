"""What came of an order, for the keeper: its invoices, lines closed and opened again, claims and their answers."""

from django.contrib import messages
from django.db import transaction
from django.http import Http404
from django.shortcuts import get_object_or_404, redirect, render
from django.utils import timezone
from django.views.decorators.http import require_http_methods, require_POST

from inventory.errors import NothingGiven, Refused
from inventory.forms.dealings import AnswerForm, ClaimForm, CloseForm, InvoiceForm
from inventory.models import Act, Claim, LineClosing, Order
from inventory.orders import (
    answer_claim,
    broken_in,
    claim,
    close_lines,
    enter_invoice,
    owed_lines,
    reopen_line,
)
from inventory.paid_sums import paid_receipts

SHEET = require_http_methods(["GET", "HEAD", "POST"])


def _order(pk):
    return get_object_or_404(Order.objects.select_related("supplier"), pk=pk)


def _answer(request, order, form, write, *, title, lead, verb, said):
    """Shows the form; sent and good, writes and leads back to the order with what happened."""
    if request.method == "POST" and form.is_valid():
        try:
            with transaction.atomic():
                write()
        except Refused as refusal:
            form.refuse(refusal)
        else:
            messages.success(request, said)
            return redirect("order", order.pk)
    page = {"order": order, "form": form, "title": title, "lead": lead, "verb": verb}
    page["cells"] = [("Order", order), ("Supplier", order.supplier)]
    return render(request, "inventory/dealing.html", page, status=422 if form.errors else 200)


@SHEET
def order_invoice(request, pk, act):
    order = _order(pk)
    receipt = next((one for one in paid_receipts(order) if one.act.pk == act), None)
    if receipt is None:
        raise Http404
    form = InvoiceForm(request.POST or None, receipt=receipt, today=timezone.localdate())

    def write():
        enter_invoice(receipt.act, who=request.user, **form.told())

    return _answer(
        request,
        order,
        form,
        write,
        title="What the invoice says",
        lead="Of this delivery alone. Where one invoice bills several deliveries, give each its share.",
        verb="Enter the invoice",
        said="The invoice is entered: what came counts at these prices.",
    )


@SHEET
def order_close(request, pk):
    order = _order(pk)
    rows = {row.line.pk: row for row in owed_lines(order) if row.owed}
    choices = [(pk, f"{row.line.offer}: {row.owed} of {row.part} owed") for pk, row in rows.items()]
    form = CloseForm(request.POST or None, open_lines=choices, today=timezone.localdate())

    def write():
        given = form.cleaned_data
        close_lines(
            order,
            set(given["lines"]),
            why=given["why"],
            day=given["day"],
            reason=given["reason"],
            who=request.user,
        )

    return _answer(
        request,
        order,
        form,
        write,
        title="Close lines",
        lead="Nothing more is owed on them from the day on; what came stays. Tell the supplier yourself.",
        verb="Close these lines",
        said="The lines are closed: nothing more is owed on them.",
    )


@require_POST
def order_reopen(request, pk):
    closing = get_object_or_404(LineClosing.objects.select_related("line__offer"), pk=pk)
    try:
        reopen_line(closing, day=timezone.localdate())
    except Refused as refusal:
        messages.error(request, str(refusal))
    else:
        messages.success(request, f"{closing.line.offer} is owed again.")
    return redirect("order", closing.line.order_id)


@SHEET
def order_claim(request, pk, act):
    order = _order(pk)
    receipt = get_object_or_404(Act.objects.filter(movements__order_line__order=order).distinct(), pk=act)
    form = ClaimForm(request.POST or None, broken=broken_in(receipt), today=timezone.localdate())

    def write():
        told = form.told()
        if not told:
            raise NothingGiven(act="claim")
        for line, part, pieces in told:
            claim(
                receipt, line=line, part=part, pieces=pieces, day=form.cleaned_data["day"], who=request.user
            )

    return _answer(
        request,
        order,
        form,
        write,
        title="Claim what came broken",
        lead="Tell the supplier yourself, with a picture; note here how many pieces.",
        verb="Note the claim",
        said="The claim is noted.",
    )


@SHEET
def order_claim_answer(request, pk):
    asked = get_object_or_404(Claim.objects.select_related("line__order__supplier", "part"), pk=pk)
    form = AnswerForm(request.POST or None, today=timezone.localdate())

    def write():
        answer_claim(asked, **form.told())

    return _answer(
        request,
        asked.line.order,
        form,
        write,
        title="The supplier's answer",
        lead=f"{asked.pieces} × {asked.part} claimed. What is replaced is owed again; a credit lowers what was paid.",
        verb="Note the answer",
        said="The answer is noted.",
    )
