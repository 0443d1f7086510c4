"""What the supplier's invoice says of a receipt: per line, and shipping.

Takes the receipt's act with cents by line; writes an Invoice beside earlier ones of it: the newest counts, so that a
mistyped figure is mended by entering it anew.
"""

from django.db import transaction
from django.utils import timezone

from inventory.errors import Refused, refuse
from inventory.models import Invoice, InvoiceLine, Location
from inventory.orders.refusals import NotPrice, NotReceipt, UnknownLine

MOST = 2_000_000_000  # cents; what a whole number of the tables holds


def enter_invoice(act, *, paid, shipping_cents, day, who=None, number=""):
    """`paid`: {(order line's id, id of a part that came instead or None): cents}, each line of the receipt once."""
    problems: list[Refused] = []
    billed = billed_lines(act)
    if not billed or hasattr(act, "reversed_by"):
        raise NotReceipt(act=act)
    if set(paid) != billed:
        problems.append(UnknownLine(reference=act))
    for cents in (*paid.values(), shipping_cents):
        if isinstance(cents, bool) or not isinstance(cents, int) or not 0 <= cents <= MOST:
            problems.append(NotPrice(what="price on the invoice", cents=cents))
    refuse(problems)
    with transaction.atomic():
        invoice = Invoice.objects.create(
            act=act,
            number=number.strip()[:40],
            day=day,
            shipping_cents=shipping_cents,
            who=who,
            recorded_at=timezone.now(),
        )
        InvoiceLine.objects.bulk_create(
            InvoiceLine(invoice=invoice, line_id=line, part_id=part, cents=cents)
            for (line, part), cents in paid.items()
        )
    return invoice


def billed_lines(act):
    """{(order line, part that came instead or None)} by id: what an invoice of this receipt prices."""
    rows = act.movements.filter(source__kind=Location.Kind.SUPPLIER, order_line__isnull=False)
    rows = rows.prefetch_related("order_line__parts")
    return {
        (
            row.order_line_id,
            None
            if any(row.part_id == content.part_id for content in row.order_line.parts.all())
            else row.part_id,
        )
        for row in rows
    }
