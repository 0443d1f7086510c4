"""Orders with their sums: what each cost, what came and what is owed, for the pages.

Takes orders; gives rows. Few questions to the database whatever their number. Changes nothing.
"""

from collections import defaultdict
from dataclasses import dataclass, field
from decimal import Decimal

from django.db.models import Sum
from django.utils.formats import date_format

from inventory.gear import Condition
from inventory.models import Act, Claim, LineClosing, Location, Order, OrderLine, OrderLinePart, Substitution
from inventory.orders import LineState, broken_in, owed_lines


@dataclass(frozen=True, kw_only=True)
class OrderRow:
    """One order in a list. Pieces of whatever unit are added: the sum only tells how much is to come."""

    order: Order
    cost: Decimal
    units: int
    came: int
    owed: int
    missing: int = 0

    @property
    def status(self):
        if self.order.status == Order.Status.PLACED and self.came:
            return "came in part"
        if self.order.status == Order.Status.RECEIVED and self.missing:
            return f"closed, {self.missing:,} short"
        return self.order.get_status_display()


@dataclass(kw_only=True)
class SheetLine:
    """One line of an order on its page, with what it brings."""

    line: OrderLine
    parts: list = field(default_factory=list)
    closings: list = field(default_factory=list)

    @property
    def closing(self):
        """How the line is closed now, if it is."""
        return next((one for one in self.closings if one.reopened_on is None), None)

    @property
    def missing(self):
        return sum(row.missing for row in self.parts)

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
    broken: set
    swaps: list
    claims: list

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
    def closed(self):
        """All closings, those opened again since too."""
        return [closing for line in self.lines for closing in line.closings]

    @property
    def is_open(self):
        return self.order.status == Order.Status.PLACED

    @property
    def gives_reasons(self):
        return any(line.line.why for line in self.lines)


def all_orders():
    """An OrderRow of each order, newest first."""
    orders = list(Order.objects.select_related("supplier").annotate(spend=Sum("lines__cost_cents")))
    parts = OrderLinePart.objects.order_by("line__order_id", "id").select_related("line", "part")
    state = LineState.of(OrderLine.objects.all())
    rows: dict[int, list] = defaultdict(list)
    for content in parts:
        rows[content.line.order_id].append(state.row(content))
    return [_row(order, rows[order.pk]) for order in orders]


def _row(order, rows):
    return OrderRow(
        order=order,
        cost=Decimal((order.spend or 0) + order.fee_cents) / 100,
        units=sum(row.units for row in rows),
        came=sum(row.came for row in rows),
        owed=sum(row.owed for row in rows),
        missing=sum(row.missing for row in rows),
    )


def order_sheet(order):
    """The order with its lines, what each brings, and the acts that received it."""
    lines = {line.pk: SheetLine(line=line) for line in order.lines.select_related("offer")}
    for row in owed_lines(order):
        lines[row.line.pk].parts.append(row)
    for closing in (
        LineClosing.objects.filter(line__order=order).select_related("line__offer", "who").order_by("id")
    ):
        lines[closing.line_id].closings.append(closing)
    receipts = Act.objects.filter(movements__order_line__order=order).distinct()
    return OrderSheet(
        order=order,
        lines=list(lines.values()),
        receipts=list(receipts.select_related("who", "reversed_by").order_by("-day", "-id")),
        broken=_claimable(order),
        swaps=list(Substitution.objects.filter(line__order=order).select_related("part", "instead")),
        claims=list(Claim.objects.filter(line__order=order).select_related("part", "act")),
    )


def _claimable(order):
    """Acts that brought broken pieces of which some are not claimed yet."""
    acts = Act.objects.filter(
        movements__order_line__order=order,
        movements__condition=Condition.TO_MEND,
        movements__source__kind=Location.Kind.SUPPLIER,
        reversed_by__isnull=True,
    ).distinct()
    return {act.pk for act in acts if any(broken_in(act).values())}
