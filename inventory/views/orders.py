"""The pages of purchase orders: all of them, one, what came of it, and cancelling it."""

from django.contrib import messages
from django.shortcuts import get_object_or_404, redirect, render
from django.urls import reverse
from django.utils import timezone
from django.views.decorators.http import require_http_methods, require_safe
from django_tables2 import RequestConfig

from apiary.rights import may_see_money
from inventory import ledger
from inventory.downloads import rows_a_page
from inventory.errors import Refused
from inventory.forms import ReceiptForm
from inventory.models import Order
from inventory.order_sums import all_orders, order_sheet
from inventory.orders import owed_lines
from inventory.paid_sums import paid_receipts
from inventory.tables import OrdersTable
from inventory.views.answering import LIFTING, ActSheet, answer, ground_of, home_store, needs_yards

SHEET = require_http_methods(["GET", "HEAD", "POST"])

RECEIVE = ActSheet(
    title="Receive",
    verb="Receive",
    rows="What came",
    template="inventory/receive.html",
    tells="owed",
    cautions=(
        (
            "used gear",
            "Gear that was on other people's bees may bring foulbrood: hold it back until someone who knows has seen it.",
        ),
        LIFTING,
    ),
)


@require_safe
def orders(request):
    rows = all_orders()
    left_out = () if may_see_money(request.user) else ("cost",)
    table = OrdersTable(rows, exclude=left_out)
    RequestConfig(request, paginate={"per_page": rows_a_page(request, 25)}).configure(table)
    waiting = [row for row in rows if row.owed]
    return render(request, "inventory/orders.html", {"table": table, "waiting": waiting, "orders": rows})


@require_safe
def order(request, pk):
    sheet = order_sheet(_order(pk))
    cells = [*sheet.cells, sheet.cost_cell] if may_see_money(request.user) else sheet.cells
    paid = paid_receipts(sheet.order) if may_see_money(request.user) else []
    return render(request, "inventory/order.html", {"sheet": sheet, "cells": cells, "paid": paid})


@SHEET
@needs_yards
def order_receive(request, pk):
    wanted = _order(pk)
    at = ground_of(request)
    form = ReceiptForm(
        request.POST or None, owed=owed_lines(wanted), into=home_store(request.user), day=at.on
    )

    def post(told):
        given = form.cleaned_data
        over = given["over_allowed"]
        return ledger.receive(
            order=wanted,
            into=given["into"],
            arrivals=form.arrivals(),
            substitutes=form.substitutes(),
            over_allowed=over,
            **told,
        )

    cells, leave = [("Order", wanted), ("Supplier", wanted.supplier)], reverse("order", args=[pk])
    return answer(request, RECEIVE, form, post, at=at.settle(), leave=leave, cells=cells, order=wanted)


@SHEET
def order_cancel(request, pk):
    """Asks once more, then cancels: nothing more is owed, what came stays."""
    wanted = _order(pk)
    if request.method != "POST":
        return render(request, "inventory/order_cancel.html", {"sheet": order_sheet(wanted)})
    try:
        ledger.cancel_order(wanted, day=timezone.localdate(), who=request.user)
    except Refused as refusal:
        messages.error(request, str(refusal))
    else:
        messages.success(
            request, f"Order {wanted} is cancelled: nothing more is owed. Tell {wanted.supplier}."
        )
    return redirect("order", pk)


def _order(pk):
    return get_object_or_404(Order.objects.select_related("supplier"), pk=pk)
