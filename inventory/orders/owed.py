"""What came of orders and what is still owed, on any day; and the status that follows.

Takes orders or lines and a day (None: by all of the books); gives OwedRows. A line closed, opened again, a part that
came instead and pieces to be replaced count from their day on.
"""

from collections import Counter
from dataclasses import dataclass

from django.db.models import Case, F, IntegerField, Q, Sum, When

from inventory.models import (
    Act,
    Claim,
    LineClosing,
    Location,
    Movement,
    Order,
    OrderLine,
    OrderLinePart,
    Part,
    Substitution,
)


@dataclass(frozen=True, kw_only=True)
class OwedRow:
    """One part of one order line: ordered, come so far (broken pieces too), settled by other parts, to be replaced,
    still owed. `closed`: cancelled or short where nothing more is to come, else empty."""

    line: OrderLine
    part: Part
    units: int
    came: int
    owed: int
    settled: int = 0
    replaced: int = 0
    closed: str = ""

    @property
    def key(self):
        return (self.line.pk, self.part.pk)

    @property
    def missing(self):
        """Pieces that were ordered and will not come."""
        return max(0, self.units + self.replaced - self.came - self.settled) if self.closed else 0


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


def closed_lines(lines, *, as_of=None):
    """{order line's id: its closing} of the lines closed on the evening of the day."""
    rows = LineClosing.objects.filter(line__in=lines)
    if as_of is None:
        rows = rows.filter(reopened_on__isnull=True)
    else:
        rows = rows.filter(Q(reopened_on__isnull=True) | Q(reopened_on__gt=as_of), day__lte=as_of)
    return {row.line_id: row for row in rows}


def settled(lines, *, as_of=None):
    """{(order line, part ordered) by id: pieces that other parts came instead of}, reversed receipts left out."""
    rows = list(Substitution.objects.filter(line__in=lines))
    if not rows:
        return Counter()
    acts = Act.objects.filter(key__in=[row.act_key for row in rows]).select_related("reversed_by")
    standing = {act.key for act in acts if _stands(act, as_of)}
    sums: Counter[tuple] = Counter()
    for row in rows:
        if row.act_key in standing:
            sums[row.line_id, row.part_id] += row.settles
    return sums


def _stands(act, as_of):
    back = getattr(act, "reversed_by", None)
    if as_of is None:
        return back is None
    return act.day <= as_of and (back is None or back.day > as_of)


def replaced(lines, *, as_of=None):
    """{(order line, part) by id: broken pieces the supplier will send anew}."""
    rows = Claim.objects.filter(line__in=lines, answer=Claim.Answer.REPLACED)
    if as_of is not None:
        rows = rows.filter(answered_on__lte=as_of)
    sums = rows.order_by().values_list("line_id", "part_id").annotate(total=Sum("pieces"))
    return Counter({(line, part): total for line, part, total in sums})


def owed_lines(order, *, as_of=None):
    """An OwedRow for each part of each line of the order; nothing is owed before it was placed."""
    return _owed_rows(order.lines.all(), unplaced=as_of is not None and order.placed_on > as_of, as_of=as_of)


def owed_everywhere(*, as_of=None):
    """An OwedRow for each part of each line of every order of which something is still to come."""
    if as_of is None:
        lines = OrderLine.objects.filter(order__status=Order.Status.PLACED)
    else:
        lines = OrderLine.objects.filter(order__placed_on__lte=as_of)
    return [row for row in _owed_rows(lines, unplaced=False, as_of=as_of) if row.owed]


def _owed_rows(lines, *, unplaced, as_of):
    parts = OrderLinePart.objects.filter(line__in=lines).select_related(
        "part", "line__order__supplier", "line__offer"
    )
    state = LineState.of(lines, as_of=as_of)
    return [
        state.row(content, unplaced=unplaced)
        for content in parts.order_by("line__order__due_on", "line_id", "id")
    ]


@dataclass(frozen=True, kw_only=True)
class LineState:
    """All that the books know of some lines on a day, each read once."""

    came: dict
    settled: Counter
    replaced: Counter
    closed: dict

    @classmethod
    def of(cls, lines, *, as_of=None):
        told = {"as_of": as_of}
        return cls(
            came=came(lines, **told),
            settled=settled(lines, **told),
            replaced=replaced(lines, **told),
            closed=closed_lines(lines, **told),
        )

    def row(self, content, *, unplaced=False):
        """The OwedRow of one OrderLinePart."""
        key, closing = (content.line_id, content.part_id), self.closed.get(content.line_id)
        told = {"came": self.came.get(key, 0), "settled": self.settled[key], "replaced": self.replaced[key]}
        open_units = max(0, content.units + told["replaced"] - told["came"] - told["settled"])
        return OwedRow(
            line=content.line,
            part=content.part,
            units=content.units,
            owed=0 if closing or unplaced else open_units,
            closed=closing.why if closing else "",
            **told,
        )


def settle(orders):
    """Sets the status that follows from what came and what was closed."""
    for order in Order.objects.filter(pk__in=[order.pk for order in orders]):
        status = derived_status(order)
        if status != order.status:
            order.status = status
            order.save(update_fields=["status"])


def derived_status(order):
    """Placed while anything is owed; cancelled where lines were and none came in full; else received."""
    rows = owed_lines(order)
    if any(row.owed for row in rows):
        return Order.Status.PLACED
    cancelled = any(row.closed == LineClosing.Why.CANCELLED for row in rows)
    in_full = any(row.came + row.settled >= row.units for row in rows)
    return Order.Status.CANCELLED if cancelled and not in_full else Order.Status.RECEIVED
