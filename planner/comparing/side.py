"""Up to four runs side by side: packs of each line, spend, worth and short seasons, against the first of them.

Takes runs told as records; gives rows of cells. Chooses none.
"""

from dataclasses import dataclass
from decimal import Decimal

from planner.comparing.lines import NOTHING, fee_of, names_of

LEAST, MOST = 2, 4


@dataclass(frozen=True, kw_only=True)
class Cell:
    """What one run has in a row: packs (None for money alone), money, and money more than the first run."""

    packs: int | None
    cost: Decimal | None
    more: Decimal | None

    @property
    def more_only(self):
        return self.more if self.more else None


@dataclass(frozen=True, kw_only=True)
class Row:
    name: str
    cells: tuple[Cell, ...]

    @property
    def differs(self):
        return any(cell.more or cell.packs != self.cells[0].packs for cell in self.cells)


@dataclass(frozen=True, kw_only=True)
class Column:
    name: str
    supposed: str
    budget: Decimal | None
    lines: int
    short_seasons: int  # seasons of 100 in which the use most often left out is left out


@dataclass(frozen=True, kw_only=True)
class ToldRow:
    """A row with each cell beside its column, as a table prints it."""

    name: str
    told: tuple[tuple[Column, Cell], ...]


@dataclass(frozen=True, kw_only=True)
class SideBySide:
    money: str
    columns: tuple[Column, ...]
    lines: tuple[Row, ...]
    fees: tuple[Row, ...]
    spend: Row
    worth: Row

    @property
    def differing(self):
        return tuple(row for row in (*self.lines, *self.fees) if row.differs)

    @property
    def differing_rows(self):
        """Each with its cells told by column."""
        return tuple(self._told(row) for row in self.differing)

    @property
    def money_rows(self):
        return tuple(self._told(row) for row in (self.spend, self.worth))

    def _told(self, row):
        return ToldRow(name=row.name, told=tuple(zip(self.columns, row.cells, strict=True)))


def side_by_side(told):
    reports = [each.report for each in told]
    suppliers = {order.supplier: order.name for report in reports for order in report.orders}
    return SideBySide(
        money=reports[0].money,
        columns=tuple(_column(each) for each in told),
        lines=tuple(
            _row(name, [_bought(report, code) for report in reports])
            for code, name in names_of(*reports).items()
        ),
        fees=tuple(
            _row(f"Shipping, {name}", [(None, fee_of(report, code)) for report in reports])
            for code, name in suppliers.items()
        ),
        spend=_row("Spend now", [(None, report.spend) for report in reports]),
        worth=_row("Expected worth", [(None, report.standing.worth) for report in reports]),
    )


def _column(told):
    report = told.report
    return Column(
        name=told.name,
        supposed=told.supposed,
        budget=report.budget,
        lines=len(report.lines),
        short_seasons=max((shortage.in_100 for shortage in report.shortages), default=0),
    )


def _bought(report, code):
    lines = [line for line in report.lines if line.offer == code]
    return sum(line.packs for line in lines), sum((line.cost for line in lines), NOTHING)


def _row(name, found):
    first = found[0][1]
    cells = (
        Cell(packs=packs, cost=cost, more=None if cost is None or first is None else cost - first)
        for packs, cost in found
    )
    return Row(name=name, cells=tuple(cells))
