"""What an order's receipts were planned to cost beside what was paid, for the keeper's page.

Takes an order; gives a PaidReceipt each, lines and shipping with their differences. Changes nothing.
"""

from dataclasses import dataclass
from decimal import Decimal

from inventory.models import Act, Invoice, OrderLine, Part
from inventory.receipts import receipts_of


@dataclass(frozen=True, kw_only=True)
class PaidLine:
    """One line of a receipt, or its shipping. `paid` is None until the invoice is entered."""

    name: str
    planned_cents: int
    paid_cents: int | None
    credit_cents: int = 0
    key: tuple = ()

    @property
    def planned(self):
        return Decimal(self.planned_cents) / 100

    @property
    def paid(self):
        return None if self.paid_cents is None else Decimal(self.paid_cents - self.credit_cents) / 100

    @property
    def credit(self):
        return Decimal(self.credit_cents) / 100

    @property
    def difference(self):
        """In words: more or less than planned; nothing where it is as planned or not known."""
        if self.paid is None or self.paid == self.planned:
            return ""
        more = self.paid > self.planned
        return f"{abs(self.paid - self.planned):,.2f} {'more' if more else 'less'}"


@dataclass(frozen=True, kw_only=True)
class PaidReceipt:
    act: Act
    invoice: Invoice | None
    lines: list

    @property
    def whole(self):
        known = self.invoice is not None
        return PaidLine(
            name="Sum",
            planned_cents=sum(line.planned_cents for line in self.lines),
            paid_cents=sum(line.paid_cents for line in self.lines) if known else None,
            credit_cents=sum(line.credit_cents for line in self.lines),
        )


def paid_receipts(order):
    """The receipts that stand, in the order in which they came."""
    undone = set(
        Act.objects.filter(movements__order_line__order=order, reversed_by__isnull=False).values_list(
            "pk", flat=True
        )
    )
    receipts = receipts_of(order=order, without=undone)
    acts = Act.objects.in_bulk([receipt.act for receipt in receipts])
    offers = {
        line.pk: str(line.offer) for line in OrderLine.objects.filter(order=order).select_related("offer")
    }
    others = Part.objects.in_bulk({part for receipt in receipts for _, part in receipt.goods if part})
    return [
        PaidReceipt(act=acts[receipt.act], invoice=receipt.invoice, lines=_lines(receipt, offers, others))
        for receipt in receipts
    ]


def _lines(receipt, offers, others):
    known = receipt.invoice is not None
    lines = [
        PaidLine(
            key=key,
            name=offers[key[0]] if key[1] is None else f"{others[key[1]]}, instead of {offers[key[0]]}",
            planned_cents=receipt.planned[key],
            paid_cents=receipt.paid.get(key, 0) if known else None,
            credit_cents=sum(credit for _, credit in receipt.credits[key]),
        )
        for key in receipt.goods
    ]
    shipping = receipt.invoice.shipping_cents if known else None
    return [*lines, PaidLine(name="Shipping", planned_cents=receipt.planned_shipping, paid_cents=shipping)]
