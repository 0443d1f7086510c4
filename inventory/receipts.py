"""What each receipt of an order cost: planned by the order, paid by its invoice, less what was credited.

Takes receiving acts, in the order of the books; gives a Receipt each, with the Delivery that prices its pieces.
Until an invoice is entered the planned price stands in, by the pieces that came. Changes nothing.
"""

from collections import Counter, defaultdict
from dataclasses import dataclass, field

from inventory.gear import Condition
from inventory.models import (
    Act,
    Claim,
    Invoice,
    Location,
    Movement,
    OrderLinePart,
    Substitution,
)
from inventory.value import Billed, Delivery, Goods, spread

FIELDS = (
    "pk",
    "act_id",
    "day",
    "act__key",
    "order_line_id",
    "order_line__order_id",
    "part_id",
    "part__list_price_cents",
    "quantity",
    "condition",
    "target__kind",
)


@dataclass(kw_only=True)
class Receipt:
    """One act that received an order. Keys of lines are (order line, part that came instead or None), by id."""

    act: int
    order: int
    day: object
    planned: dict = field(default_factory=lambda: defaultdict(int))
    planned_shipping: int = 0
    invoice: Invoice | None = None
    paid: dict = field(default_factory=dict)
    credits: dict = field(default_factory=lambda: defaultdict(list))
    goods: dict = field(default_factory=lambda: defaultdict(list))

    @property
    def shipping(self):
        return self.planned_shipping if self.invoice is None else self.invoice.shipping_cents

    def cents_of(self, key):
        """What a line cost before credits."""
        return self.planned[key] if self.invoice is None else self.paid.get(key, 0)

    @property
    def cents(self):
        return self.shipping + sum(self.cents_of(key) for key in self.goods)

    @property
    def planned_cents(self):
        return self.planned_shipping + sum(self.planned.values())

    @property
    def credit_cents(self):
        return sum(credit for told in self.credits.values() for _, credit in told)

    @property
    def delivery(self):
        return Delivery(
            lines=tuple(
                Billed(goods=tuple(goods), cents=self.cents_of(key), credits=tuple(self.credits[key]))
                for key, goods in self.goods.items()
            ),
            shipping_cents=self.shipping,
        )


def receipts_of(*, order=None, without=frozenset()):
    """Receipts of one order or of all, in the order of the books; acts in `without` do not count at all."""
    rows = Movement.objects.filter(source__kind=Location.Kind.SUPPLIER, order_line__isnull=False)
    if order is not None:
        rows = rows.filter(order_line__order=order)
    told = [row for row in rows.order_by("day", "id").values_list(*FIELDS) if row[1] not in without]
    agreed = _Agreed({row[5] for row in told})
    receipts: dict[tuple, Receipt] = {}
    for row in told:
        receipt = receipts.setdefault((row[1], row[5]), Receipt(act=row[1], order=row[5], day=row[2]))
        agreed.take(receipt, row)
    _bill(receipts)
    for receipt in receipts.values():
        agreed.ship(receipt)
    return list(receipts.values())


class _Agreed:
    """What the orders agreed: the price of each line by part, shipping by order; and how much of it was used."""

    def __init__(self, orders):
        lines: dict[int, list] = defaultdict(list)
        parts = OrderLinePart.objects.filter(line__order__in=orders).select_related("line__order", "part")
        for content in parts.order_by("id"):
            lines[content.line_id].append(content)
        self.price, self.units, self.fees = {}, {}, {}
        self.goods: Counter[int] = Counter()
        for contents in lines.values():
            line = contents[0].line
            weights = [content.units * content.part.list_price_cents for content in contents]
            for content, cents in zip(contents, spread(line.cost_cents, weights), strict=True):
                self.price[line.pk, content.part_id] = cents
                self.units[line.pk, content.part_id] = content.units
            self.fees[line.order_id] = line.order.fee_cents
            self.goods[line.order_id] += line.cost_cents
        self.came: Counter[tuple] = Counter()
        self.used: Counter[int] = Counter()
        self.shipped: Counter[int] = Counter()
        again = Claim.objects.filter(line__order__in=orders, answer=Claim.Answer.REPLACED)
        self.free: Counter[tuple] = Counter()
        for line, part, pieces in again.values_list("line_id", "part_id", "pieces"):
            self.free[line, part] += pieces
        swaps = Substitution.objects.filter(line__order__in=orders)
        self.swaps = defaultdict(list)
        for swap in swaps:
            self.swaps[swap.act_key, swap.line_id, swap.instead_id].append(swap)

    def take(self, receipt, row):
        """Adds one movement to its receipt with what was planned for it."""
        pk, _, _, act_key, line, _, part, list_price, quantity, condition, target = row
        swaps = [] if (line, part) in self.price else self.swaps[act_key, line, part]
        if swaps:
            agreed = sum(self._planned(line, swap.part_id, swap.settles) for swap in swaps)
            planned = agreed * quantity // sum(swap.pieces for swap in swaps)
        elif (line, part) in self.price:
            planned = self._planned_next(line, part, quantity)
        else:
            planned = 0
        key = (line, None if (line, part) in self.price else part)
        receipt.planned[key] += planned
        broken = 2 if target == Location.Kind.SCRAP else int(condition == Condition.TO_MEND)
        weight = planned or quantity * list_price
        receipt.goods[key].append(
            Goods(key=str(pk), part=str(part), pieces=quantity, weight=weight, broken=broken)
        )

    def _planned_next(self, line, part, pieces):
        """The next pieces of a line: those ordered, then those replaced free of charge, then those over."""
        units, free = self.units[line, part], self.free[line, part]
        before, after = self.came[line, part], self.came[line, part] + pieces
        self.came[line, part] = after
        charged = [min(n, units) + max(0, n - units - free) for n in (before, after)]
        return self._planned(line, part, charged[1]) - self._planned(line, part, charged[0])

    def _planned(self, line, part, pieces):
        return self.price[line, part] * pieces // self.units[line, part]

    def ship(self, receipt):
        """Shipping in proportion to the goods planned, as far as no invoice has taken it already."""
        order, goods = receipt.order, sum(receipt.planned.values())
        fee, whole = self.fees[order], self.goods[order]
        before, after = self.used[order], self.used[order] + goods
        self.used[order] = after
        share = 0
        if whole:
            share = fee * min(after, whole) // whole - fee * min(before, whole) // whole
        elif not self.shipped[order]:
            share = fee
        left = max(0, fee - self.shipped[order])
        receipt.planned_shipping = min(share, left) if receipt.invoice is None else share
        self.shipped[order] += receipt.shipping


def _bill(receipts):
    """Gives each receipt its newest invoice and what was credited since."""
    acts = {act for act, _ in receipts}
    newest: dict[int, Invoice] = {}
    for invoice in Invoice.objects.filter(act__in=acts).order_by("id").prefetch_related("lines"):
        newest[invoice.act_id] = invoice
    for (act, _order), receipt in receipts.items():
        last = newest.get(act)
        if last is not None:
            receipt.invoice = last
            receipt.paid = {(line.line_id, line.part_id): line.cents for line in last.lines.all()}
    credits = Claim.objects.filter(act__in=acts, answer=Claim.Answer.CREDITED).select_related("line")
    for claim in credits:
        receipt = receipts[claim.act_id, claim.line.order_id]
        for key, goods in receipt.goods.items():
            if key[0] == claim.line_id and any(one.part == str(claim.part_id) for one in goods):
                receipt.credits[key].append((str(claim.part_id), claim.credit_cents))
                break


def acts_without_invoice(*, last=None):
    """Receipts that stand and have no invoice yet: until it is entered the planned price is counted."""
    rows = Act.objects.filter(
        movements__source__kind=Location.Kind.SUPPLIER, movements__order_line__isnull=False
    ).exclude(reversed_by__isnull=False)
    if last is not None:
        rows = rows.filter(day__lte=last)
    return rows.filter(invoices__isnull=True, reverses__isnull=True).distinct().order_by("day", "id")
