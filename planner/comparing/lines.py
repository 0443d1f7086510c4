"""Two orders line by line: packs and money of each offer, and the fees beside them.

Takes two reports; gives what differs. The differences of lines and fees add up to that of the spend, to the cent.
"""

from dataclasses import dataclass
from decimal import Decimal

NOTHING = Decimal(0)


@dataclass(frozen=True, kw_only=True)
class LineChange:
    """One offer, or the shipping of one supplier (`packs` None): before and now."""

    code: str
    name: str
    packs_before: int | None
    packs_now: int | None
    cost_before: Decimal
    cost_now: Decimal

    @property
    def more(self):
        """Money more now; less where below nothing."""
        return self.cost_now - self.cost_before

    @property
    def more_packs(self):
        return (self.packs_now or 0) - (self.packs_before or 0)

    @property
    def is_change(self):
        return bool(self.more or self.more_packs)


def line_changes(before, now):
    """Offers that differ, the largest money first, then shipping by supplier."""
    lines = [
        LineChange(
            code=code,
            name=name,
            packs_before=_packs(before, code),
            packs_now=_packs(now, code),
            cost_before=_cost(before, code),
            cost_now=_cost(now, code),
        )
        for code, name in names_of(before, now).items()
    ]
    changed = sorted(
        (line for line in lines if line.is_change), key=lambda line: (-abs(line.more), line.code)
    )
    return (*changed, *_fees(before, now))


def names_of(*reports):
    """code -> name of every offer that any of them buys, in the order of their lines."""
    return {line.offer: line.name for report in reports for line in report.lines}


def _packs(report, code):
    return sum(line.packs for line in report.lines if line.offer == code)


def _cost(report, code):
    return sum((line.cost for line in report.lines if line.offer == code), NOTHING)


def fee_of(report, supplier):
    return sum((order.fee for order in report.orders if order.supplier == supplier), NOTHING)


def _fees(before, now):
    suppliers = {order.supplier: order.name for report in (before, now) for order in report.orders}
    rows = (
        LineChange(
            code=f"shipping/{code}",
            name=f"Shipping, {name}",
            packs_before=None,
            packs_now=None,
            cost_before=fee_of(before, code),
            cost_now=fee_of(now, code),
        )
        for code, name in suppliers.items()
    )
    return tuple(row for row in rows if row.is_change)
