"""Orders with their sums: what each cost, what came and what is owed, for the pages.

Takes orders; gives rows. Few questions to the database whatever their number. Changes nothing.
"""

from collections import defaultdict
from dataclasses import dataclass, field
from decimal import Decimal

from django.db.models import Sum
from django.utils.formats import date_format

from inventory.models import Act, Order, OrderLine, OrderLinePart
from inventory.orders import came, owed_lines


@dataclass(frozen=True, kw_only=True)
class OrderRow:
    """One order in a list. Pieces of whatever unit are added: the sum only tells how much is to come."""

    order: Order
    cost: Decimal
    units: int
    came: int
    owed: int

    @property
    def status(self):
        if self.order.status == Order.Status.PLACED and self.came:
            return "came in part"
        return self.order.get_status_display()


@dataclass(kw_only=True)
class SheetLine:
    """One line of an order on its page, with what it brings."""

    line: OrderLine
    parts: list = field(default_factory=list)

    @property
    def cost(self):
        return Decimal(self.line.cost_cents) / 100

    @property
    def owed(self):
        return sum(row.owed for row in self.parts)


@dataclass(frozen=True, kw_only=True)
class OrderSheet:
    """All that the page of an order shows."""

    order: Order
    lines: list
    receipts: list

    @property
    def fee(self):
        return Decimal(self.order.fee_cents) / 100

    @property
    def total(self):
        return self.fee + sum(line.cost for line in self.lines)

    @property
    def owed(self):
        return sum(line.owed for line in self.lines)

    @property
    def came(self):
        return sum(row.came for line in self.lines for row in line.parts)

    @property
    def owed_words(self):
        return f"{self.owed:,} owed" if self.owed else "nothing owed"

    @property
    def cells(self):
        order = self.order
        return [
            ("Supplier", order.supplier),
            ("Placed", date_format(order.placed_on, "j M Y")),
            ("Due", date_format(order.due_on, "j M Y")),
            ("Status", order.get_status_display()),
        ]

    @property
    def cost_cell(self):
        """For who sees money."""
        return ("Cost", f"{self.total:,.2f}")

    @property
    def is_open(self):
        return self.order.status == Order.Status.PLACED

    @property
    def gives_reasons(self):
        return any(line.line.why for line in self.lines)


def all_orders():
    """An OrderRow of each order, newest first."""
    orders = list(Order.objects.select_related("supplier").annotate(spend=Sum("lines__cost_cents")))
    units = OrderLinePart.objects.order_by().values_list("line__order_id", "line_id", "part_id", "units")
    so_far = came(OrderLine.objects.all())
    sums: dict[int, list[int]] = defaultdict(lambda: [0, 0, 0])
    for order, line, part, wanted in units:
        got = so_far.get((line, part), 0)
        for number, value in enumerate((wanted, got, max(0, wanted - got))):
            sums[order][number] += value
    return [_row(order, *sums[order.pk]) for order in orders]


def _row(order, units, got, owed):
    cancelled = order.status == Order.Status.CANCELLED
    cost = Decimal((order.spend or 0) + order.fee_cents) / 100
    return OrderRow(order=order, cost=cost, units=units, came=got, owed=0 if cancelled else owed)


def order_sheet(order):
    """The order with its lines, what each brings, and the acts that received it."""
    lines = {line.pk: SheetLine(line=line) for line in order.lines.select_related("offer")}
    for row in owed_lines(order):
        lines[row.line.pk].parts.append(row)
    receipts = Act.objects.filter(movements__order_line__order=order).distinct().select_related("who")
    return OrderSheet(
        order=order, lines=list(lines.values()), receipts=list(receipts.order_by("-day", "-id"))
    )
