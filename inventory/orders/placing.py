"""Placing a purchase order.

Takes a supplier and items (offer, packs); gives the Order with what each line brings.
"""

import datetime as dt
from dataclasses import dataclass
from decimal import Decimal

from django.db import transaction

from inventory.errors import (
    NothingGiven,
    NotWhole,
    OtherSupplier,
    ReferenceTaken,
    Refused,
    TooManyPacks,
    refuse,
)
from inventory.models import Offer, Order, OrderLinePart


@dataclass(frozen=True, kw_only=True)
class OrderItem:
    """Packs of one offer. Without `cost` (all packs, Decimal) the offer's price steps say."""

    offer: Offer
    packs: int
    cost: Decimal | None = None
    why: str = ""


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
