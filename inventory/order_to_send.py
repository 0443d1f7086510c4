"""An order of the books as the purchase order that is sent, and what is still missing on it.

Takes an Order; gives a PurchaseOrder with what was not cancelled, and sentences. Writes only the order's note.
"""

import contextlib
import io
import zipfile
from dataclasses import dataclass
from decimal import Decimal

from django.utils.text import slugify

from apiary.operation import operation
from inventory.errors import Refused
from inventory.models import LineClosing, Offer, Order
from inventory.orders import closed_lines, cost_of
from inventory.printed import AskedLine, Content, Party, PurchaseOrder, file_name, purchase_order


class NothingToSend(Refused):
    sentence = (
        "Order {reference} is cancelled in every line: there is nothing to send. Place a new order instead."
    )


@dataclass(frozen=True, kw_only=True)
class Lacking:
    """One thing missing on the paper: what, and the name of the page where it is told."""

    words: str
    page: str


def to_send(order):
    """The PurchaseOrder of an order; NothingToSend where every line was cancelled."""
    closed = closed_lines(order.lines.all())
    cancelled = {line for line, closing in closed.items() if closing.why == LineClosing.Why.CANCELLED}
    rows = order.lines.exclude(pk__in=cancelled).select_related("offer")
    lines = [_asked(line, order) for line in rows.prefetch_related("parts__part", "offer__steps")]
    if not lines:
        raise NothingToSend(reference=order.reference)
    keeper, supplier = operation(), order.supplier
    return PurchaseOrder(
        reference=order.reference,
        day=order.placed_on,
        wanted_by=order.due_on,
        money=keeper.money,
        sender=_party(keeper),
        supplier=_party(supplier),
        customer_number=supplier.customer_number,
        lines=tuple(lines),
        fee=Decimal(order.fee_cents) / 100,
        note=order.note,
    )


def lacking(paper):
    """What the supplier would miss on it, as Lackings."""
    found = []
    if not (paper.sender.name and paper.sender.address):
        found.append(Lacking(words="Your name and address are not written down yet", page="operation"))
    if not paper.supplier.address:
        words = f"The address of {paper.supplier.name} is not written down yet"
        found.append(Lacking(words=words, page="supplier"))
    return found


def name_of_file(order):
    """Its number in the books and the supplier: no two orders share it."""
    return file_name("order", order.pk, slugify(order.supplier.name) or order.supplier.code, ending="xlsx")


def all_to_send(orders, *, paper=None):
    """A .zip file with the workbook of each order; those cancelled in every line are left out."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as file:
        for order in orders:
            with contextlib.suppress(NothingToSend):
                file.writestr(name_of_file(order), purchase_order(to_send(order), paper=paper))
        if not file.namelist():
            raise NothingToSend(reference=", ".join(order.reference for order in orders))
    return out.getvalue()


def write_note(order, note):
    """What the keeper adds in words; gives the order."""
    order.note = "\n".join(line.rstrip() for line in note.strip().splitlines())
    Order.objects.filter(pk=order.pk).update(note=order.note)
    return order


def _party(row):
    return Party(name=row.name, address=row.address, phone=row.phone, email=row.email)


def _asked(line, order):
    """A line with its price steps where packs cost differently, or without a price where none is known."""
    contents = tuple(
        Content(name=each.part.name, units=each.units, unit=each.part.unit) for each in line.parts.all()
    )
    offer, cost = line.offer, Decimal(line.cost_cents) / 100
    asks = not line.cost_cents or (offer.open_until is not None and offer.open_until < order.placed_on)
    return AskedLine(
        name=offer.name,
        packs=line.packs,
        contents=contents,
        cost=None if asks else cost,
        bill=() if asks else bill_of(offer, line.packs, cost),
    )


def bill_of(offer, packs, cost):
    """((packs, price), …) that come to the cost: the steps of the price list where they still do, else one price for
    all packs; empty where that is no whole number of cents."""
    steps = sorted((step.from_packs, step.price_cents) for step in offer.steps.all())
    stepped = offer.price_rule == Offer.Rule.INCREMENTAL and steps and steps[0][0] == 1
    if stepped and cost_of(offer, packs) == cost:
        return _by_steps(steps, packs)
    price = cost / packs
    return ((packs, price),) if price == price.quantize(Decimal("0.01")) else ()


def _by_steps(steps, packs):
    ends = [start for start, _price in steps[1:]] + [packs + 1]
    taken = [
        (min(packs, end - 1) - start + 1, Decimal(cents) / 100)
        for (start, cents), end in zip(steps, ends, strict=True)
    ]
    return tuple((count, price) for count, price in taken if count > 0)
