"""Lines of which nothing more will come: cancelled, or the supplier will not send the rest. And opening them again.

Takes an order or its lines, the day and the reason; writes LineClosing and the status that follows. A closing counts
from its day only: what was owed before stays owed on the days before.
"""

from django.db import transaction

from apiary.colonies import refuse_future
from inventory.errors import BeforeOrdered, NothingGiven, OrderClosed, Refused, refuse
from inventory.models import LineClosing, Order
from inventory.orders.owed import owed_lines, settle
from inventory.orders.refusals import (
    ClosedBefore,
    LineClosed,
    LineOpen,
    NoReason,
    NothingOwed,
    UnknownLine,
)

LONGEST = LineClosing._meta.get_field("reason").max_length


def cancel_order(order, *, day, who=None, reason=""):
    """Nothing more is owed on the order from the day on; what came stays. Refused once all of it came, or twice."""
    with transaction.atomic():
        current = Order.objects.select_for_update().get(pk=order.pk)
        if current.status != Order.Status.PLACED:
            raise OrderClosed(reference=current.reference, status=current.get_status_display())
        lines = {row.line.pk for row in owed_lines(current) if row.owed}
        _close(current, lines, LineClosing.Why.CANCELLED, day, who, reason)
    current.refresh_from_db()
    return current


def close_lines(order, lines, *, why, day, who=None, reason=""):
    """Cancels some lines (by id), or closes them short with the reason the supplier gave."""
    with transaction.atomic():
        current = Order.objects.select_for_update().get(pk=order.pk)
        rows = owed_lines(current)
        problems: list[Refused] = []
        known = {row.line.pk: row.line for row in rows}
        for line in lines:
            if line not in known:
                problems.append(UnknownLine(reference=current.reference))
            elif any(row.closed for row in rows if row.line.pk == line):
                problems.append(LineClosed(line=known[line].offer, reference=current.reference))
            elif not any(row.owed for row in rows if row.line.pk == line):
                problems.append(NothingOwed(line=known[line].offer, reference=current.reference))
        if not lines:
            raise NothingGiven(act="close")
        if why == LineClosing.Why.SHORT and not reason.strip():
            problems.append(NoReason(reference=current.reference))
        refuse(problems)
        _close(current, lines, why, day, who, reason)
    current.refresh_from_db()
    return current


def reopen_line(closing, *, day):
    """It will come after all: what is missing is owed again from the day on."""
    with transaction.atomic():
        current = LineClosing.objects.select_for_update().select_related("line__order").get(pk=closing.pk)
        order = current.line.order
        if current.reopened_on is not None:
            raise LineOpen(line=current.line.offer, reference=order.reference)
        refuse_future(day)
        if day < current.day:
            raise ClosedBefore(line=current.line.offer, closed_on=current.day, day=day)
        current.reopened_on = day
        current.save(update_fields=["reopened_on"])
        settle([order])
    return current


def _close(order, lines, why, day, who, reason):
    refuse_future(day)
    if day < order.placed_on:
        raise BeforeOrdered(reference=order.reference, placed_on=order.placed_on, day=day)
    reason = " ".join(reason.split())[:LONGEST]
    LineClosing.objects.bulk_create(
        LineClosing(line_id=line, why=why, day=day, who=who, reason=reason) for line in sorted(lines)
    )
    settle([order])
