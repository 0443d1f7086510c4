"""The pages of an order to send: how it will read, its file, all of a run's in one; and a supplier's letterhead."""

from django.contrib import messages
from django.http import HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.views.decorators.http import require_http_methods, require_safe

from inventory.errors import Refused
from inventory.forms.letters import NoteForm, SupplierForm
from inventory.models import Order, Supplier
from inventory.order_to_send import lacking, name_of_file, to_send, write_note
from inventory.printed import purchase_order
from inventory.printed.cells import PAPERS, paper_for
from inventory.suppliers import tell_supplier

FORM = require_http_methods(["GET", "HEAD", "POST"])
WORKBOOK = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"


@FORM
def order_send(request, pk):
    """How the order reads for the supplier; by POST the note on it."""
    order = _order(pk)
    form = NoteForm(request.POST or None, initial={"note": order.note})
    if request.method == "POST" and form.is_valid():
        write_note(order, form.cleaned_data["note"])
        messages.success(request, "The note is kept and stands on the order.")
        return redirect("order-send", pk)
    try:
        paper = to_send(order)
    except Refused as refusal:
        messages.error(request, str(refusal))
        return redirect("order", pk)
    usual = paper_for(paper.money)
    page = {"order": order, "paper": paper, "form": form, "lacking": lacking(paper)}
    page |= {"usual": usual, "other": next(name for name in PAPERS if name != usual)}
    return render(request, "inventory/order_send.html", page, status=422 if form.errors else 200)


@require_safe
def order_file(request, pk):
    """The purchase order as a workbook, on the paper asked for."""
    order, paper = _order(pk), request.GET.get("paper")
    try:
        data = purchase_order(to_send(order), paper=paper if paper in PAPERS else None)
    except Refused as refusal:
        messages.error(request, str(refusal))
        return redirect("order", pk)
    disposition = {"Content-Disposition": f'attachment; filename="{name_of_file(order)}"'}
    return HttpResponse(data, content_type=WORKBOOK, headers=disposition)


@FORM
def supplier(request, pk):
    """How a supplier is reached, and the number they know the keeper by."""
    seller = get_object_or_404(Supplier, pk=pk)
    form = SupplierForm(request.POST or None, instance=seller)
    if request.method == "POST" and form.is_valid():
        tell_supplier(seller, **form.cleaned_data)
        messages.success(request, f"Kept: this stands on every order to {seller}.")
        return redirect("operation")
    page = {"supplier": seller, "form": form}
    return render(request, "inventory/supplier.html", page, status=422 if form.errors else 200)


def _order(pk):
    return get_object_or_404(Order.objects.select_related("supplier"), pk=pk)
