"""Purchase orders: placed, cancelled, and what is still owed on them. Only writer of Order.

Takes a supplier and items (offer, packs); gives the Order with what each line brings. What came of it is told
by movements that name its lines; the status follows from them.
"""

import datetime as dt
from dataclasses import dataclass
from decimal import Decimal

from django.db import transaction
from django.db.models import Case, F, IntegerField, Sum, When

from inventory.errors import (
    NothingGiven,
    NotWhole,
    OrderClosed,
    OtherSupplier,
    ReferenceTaken,
    Refused,
    TooManyPacks,
    refuse,
)
from inventory.models import Location, Movement, Offer, Order, OrderLine, OrderLinePart, Part


@dataclass(frozen=True, kw_only=True)
class OrderItem:
    """Packs of one offer. Without `cost` (all packs, Decimal) the offer's price steps say."""

    offer: Offer
    packs: int
    cost: Decimal | None = None
    why: str = ""


@dataclass(frozen=True, kw_only=True)
class OwedRow:
    """One part of one order line: ordered, come so far (broken pieces too), still owed."""

    line: OrderLine
    part: Part
    units: int
    came: int
    owed: int

    @property
    def key(self):
        return (self.line.pk, self.part.pk)


def cents(money):
    """Whole cents of a Decimal; a fraction of a cent is a bug."""
    whole = money * 100
    if whole != int(whole):
        raise ValueError(f"{money} is not a whole number of cents")
    return int(whole)


def cost_of(offer, packs):
    """What so many packs of an offer cost in one order, by its price steps (Decimal)."""
    steps = sorted((step.from_packs, step.price_cents) for step in offer.steps.all())
    if not steps or packs < steps[0][0]:
        raise NotWhole(
            part=offer, quantity=packs, lowest=steps[0][0] if steps else 1, highest=offer.max_packs or "any"
        )
    if offer.price_rule == Offer.Rule.ALL_UNITS:
        price = max(step for step in steps if step[0] <= packs)[1]
        return Decimal(packs * price) / 100
    total = 0
    for (start, price), after in zip(steps, [*steps[1:], (packs + 1, 0)], strict=True):
        total += max(0, min(packs, after[0] - 1) - start + 1) * price
    return Decimal(total) / 100


def place_order(supplier, lines, *, placed_on, due_on=None, fee=None, reference=None):
    """Writes a purchase order of OrderItems. Without `fee` the supplier's own, waived from its free-from on."""
    lines = list(lines)
    _refuse_items(supplier, lines)
    costs = [line.cost if line.cost is not None else cost_of(line.offer, line.packs) for line in lines]
    with transaction.atomic():
        order = Order.objects.create(
            supplier=supplier,
            reference=_reference(supplier, placed_on, reference),
            placed_on=placed_on,
            due_on=due_on or placed_on + dt.timedelta(weeks=_lead_weeks(supplier, lines)),
            fee_cents=_fee_cents(supplier, sum(costs)) if fee is None else cents(fee),
        )
        for line, cost in zip(lines, costs, strict=True):
            row = order.lines.create(offer=line.offer, packs=line.packs, cost_cents=cents(cost), why=line.why)
            OrderLinePart.objects.bulk_create(
                OrderLinePart(line=row, part=content.part, units=content.units * line.packs)
                for content in line.offer.parts.select_related("part")
            )
    return order


def _refuse_items(supplier, lines):
    problems: list[Refused] = []
    for line in lines:
        offer, packs = line.offer, line.packs
        if offer.supplier_id != supplier.pk:
            problems.append(OtherSupplier(offer=offer, seller=offer.supplier, supplier=supplier))
        if isinstance(packs, bool) or not isinstance(packs, int) or packs < 1:
            problems.append(NotWhole(part=offer, quantity=packs, lowest=1, highest=offer.max_packs or "any"))
        elif offer.max_packs is not None and packs > offer.max_packs:
            problems.append(TooManyPacks(offer=offer, packs=packs, max_packs=offer.max_packs))
    refuse(problems)
    if not lines:
        raise NothingGiven(act="order")


def _reference(supplier, placed_on, wanted):
    if wanted is not None:
        if Order.objects.filter(reference=wanted).exists():
            raise ReferenceTaken(reference=wanted)
        return wanted
    stem = f"{supplier.code}-{placed_on:%Y%m%d}"
    taken = set(Order.objects.filter(reference__startswith=stem).values_list("reference", flat=True))
    number = 1
    while (reference := f"{stem}-{number}") in taken:
        number += 1
    return reference


def _lead_weeks(supplier, lines):
    return max(
        line.offer.lead_weeks if line.offer.lead_weeks is not None else supplier.lead_weeks for line in lines
    )


def _fee_cents(supplier, spend):
    free_from = supplier.free_from_cents
    if free_from is not None and cents(spend) >= free_from:
        return 0
    return supplier.order_fee_cents


def cancel_order(order):
    """Nothing more is owed on the order; what came stays. Refused once all of it came, or twice."""
    with transaction.atomic():
        current = Order.objects.select_for_update().get(pk=order.pk)
        if current.status != Order.Status.PLACED:
            raise OrderClosed(reference=current.reference, status=current.get_status_display())
        current.status = Order.Status.CANCELLED
        current.save(update_fields=["status"])
    return current


def came(lines, *, as_of=None):
    """{(order line, part) by id: pieces that came, less those whose receipt was reversed}."""
    sign = Case(
        When(source__kind=Location.Kind.SUPPLIER, then=F("quantity")),
        When(target__kind=Location.Kind.SUPPLIER, then=-F("quantity")),
        default=0,
        output_field=IntegerField(),
    )
    rows = Movement.objects.filter(order_line__in=lines).order_by()
    if as_of is not None:
        rows = rows.filter(day__lte=as_of)
    sums = rows.values_list("order_line_id", "part_id").annotate(total=Sum(sign))
    return {(line, part): total for line, part, total in sums}


def owed_lines(order, *, as_of=None):
    """An OwedRow for each part of each line of the order; nothing is owed before it was placed."""
    closed = order.status == Order.Status.CANCELLED or (as_of is not None and order.placed_on > as_of)
    return _owed_rows(order.lines.all(), closed=closed, as_of=as_of)


def owed_everywhere(*, as_of=None):
    """An OwedRow for each part of each line of every order of which something is still to come."""
    lines = OrderLine.objects.exclude(order__status=Order.Status.CANCELLED)
    if as_of is None:
        lines = lines.filter(order__status=Order.Status.PLACED)
    else:
        lines = lines.filter(order__placed_on__lte=as_of)
    return [row for row in _owed_rows(lines, closed=False, as_of=as_of) if row.owed]


def _owed_rows(lines, *, closed, as_of):
    parts = OrderLinePart.objects.filter(line__in=lines).select_related(
        "part", "line__order__supplier", "line__offer"
    )
    so_far = came(lines, as_of=as_of)
    rows = []
    for content in parts.order_by("line__order__due_on", "line_id", "id"):
        got = so_far.get((content.line_id, content.part_id), 0)
        owed = 0 if closed else max(0, content.units - got)
        rows.append(OwedRow(line=content.line, part=content.part, units=content.units, came=got, owed=owed))
    return rows


def settle(orders):
    """Sets the status that follows from what came; a cancelled order stays cancelled."""
    for order in Order.objects.filter(pk__in=[order.pk for order in orders]):
        status = derived_status(order)
        if status != order.status:
            order.status = status
            order.save(update_fields=["status"])


def derived_status(order):
    if order.status == Order.Status.CANCELLED:
        return order.status
    open_units = any(row.owed for row in owed_lines(order))
    return Order.Status.PLACED if open_units else Order.Status.RECEIVED
