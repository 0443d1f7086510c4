"""The pages of an order worked out: its lines with their reasons, its files, approving it.

Each view calls one act or question of a run and answers; refusals of the trade are shown as messages.
"""

from django.contrib import messages
from django.http import HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.utils import timezone
from django.utils.text import slugify
from django.views.decorators.http import require_safe

from inventory.order_to_send import all_to_send
from planner import runs, variants
from planner.errors import NotDone, Refused
from planner.models import Run
from planner.order_rows import order_page
from planner.plan.json_form import report_from
from planner.supposing import words_of
from planner.workbook import workbook_of

WORKBOOK = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"


@require_safe
def run_order(request, pk):
    """The order by supplier, each line with its reason."""
    run = run_of(pk)
    if not run.is_done:
        return redirect("run", run.pk)
    found = {"run": run, "page": order_page(report_from(run.report)), "changes": variants.changes_since(run)}
    found |= {"supposed": words_of(run.what_if), "checking": variants.check_under_way(run)}
    return render(request, "planner/order.html", found)


@require_safe
def run_workbook(request, pk):
    """The order as a workbook."""
    run = run_of(pk)
    if not run.is_done:
        messages.error(request, str(NotDone(run=run.pk, status=run.get_status_display())))
        return redirect("run", run.pk)
    name = f"winter-order-{slugify(run.season.name)}-{run.pk}.xlsx"
    disposition = {"Content-Disposition": f'attachment; filename="{name}"'}
    return HttpResponse(workbook_of(report_from(run.report)), content_type=WORKBOOK, headers=disposition)


@require_safe
def run_orders(request, pk):
    """The purchase orders made of an approved run, a workbook each."""
    run = run_of(pk)
    try:
        data = all_to_send(runs.orders_of(run))
    except Refused as refusal:
        messages.error(request, str(refusal))
        return redirect("run-order", run.pk)
    disposition = {"Content-Disposition": f'attachment; filename="orders-{run.pk}.zip"'}
    return HttpResponse(data, content_type="application/zip", headers=disposition)


def run_approve(request, pk):
    """Asks once more, then makes the purchase orders."""
    run = run_of(pk)
    if request.method != "POST":
        try:
            report = runs.approvable(run)
        except Refused as refusal:
            messages.error(request, str(refusal))
            return redirect("run", run.pk)
        return render(request, "planner/approve.html", {"run": run, "page": order_page(report)})
    try:
        orders = runs.approve(run, who=request.user, on=timezone.localdate())
    except Refused as refusal:
        messages.error(request, str(refusal))
        return redirect("run", run.pk)
    made = ", ".join(f"{order.supplier} ({order.reference})" for order in orders)
    messages.success(
        request, f"Ordered: {made}. Send each supplier its order; receive the gear when it comes."
    )
    return redirect("run-order", run.pk)


def run_of(pk):
    """A run with its season, or not found."""
    return get_object_or_404(Run.objects.select_related("season"), pk=pk)
