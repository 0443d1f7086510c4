"""A report as the order page shows it: rows with their words, sums with their signs, rulers. Pure.

Takes a Report; gives an OrderPage. Computes no plan: only words and places on a line.
"""

import datetime as dt
from dataclasses import dataclass
from decimal import Decimal

from planner.beliefs_chart import BeliefsChart, beliefs_chart
from planner.budget_chart import BudgetChart, budget_chart
from planner.charts import CurveChart, TrialChart, bad_years_chart, trial_chart
from planner.plan.records import Line, Report, SupplierOrder
from planner.plan.words import SIGNS, amount, number, sum_words
from planner.rulers import BudgetLine, NeedRuler, budget_line, need_ruler


@dataclass(frozen=True, kw_only=True)
class NeedWords:
    """The ruler inside a reason, the head above it and the sentence that says the same."""

    ruler: NeedRuler
    head: str
    short: str
    said: str


@dataclass(frozen=True, kw_only=True)
class OrderRow:
    line: Line
    packs: str
    units: str
    brings: str
    each: Decimal
    need: NeedWords | None


@dataclass(frozen=True, kw_only=True)
class SupplierTable:
    order: SupplierOrder
    rows: tuple[OrderRow, ...]


@dataclass(frozen=True, kw_only=True)
class OrderPage:
    report: Report
    tables: tuple[SupplierTable, ...]
    budget_line: BudgetLine | None
    budget_said: str
    spend_said: str
    count_said: str
    order_by: dt.date | None
    trial_chart: TrialChart | None = None
    bad_years_chart: CurveChart | None = None
    budget_chart: BudgetChart | None = None
    beliefs_chart: BeliefsChart | None = None

    @property
    def money(self):
        return SIGNS.get(self.report.money, self.report.money)

    @property
    def trial_head(self):
        against = {"yours": "your usual order", "rule": "the rule of thumb"}
        key = self.report.trial.against if self.report.trial else ""
        return f"Trial against {against[key]}" if key in against else "Trial on fresh seasons"

    @property
    def trial_sum(self):
        return f"{self.money} a season"

    @property
    def trial_against(self):
        trial = self.report.trial
        if trial is None:
            return ""
        return "yours" if trial.against == "yours" else trial.against_name

    @property
    def bad_years_sum(self):
        curve = self.report.bad_years
        return _counted(len(curve.points) if curve else 0, "weight")

    @property
    def beliefs_sum(self):
        section = self.report.beliefs
        return _counted(len(section.rows) if section else 0, "answer")

    @property
    def to_find_out(self):
        """The beliefs that would pay most to know better."""
        section = self.report.beliefs
        return [section.row(key) for key in section.first] if section else []

    @property
    def budgets_sum(self):
        section = self.report.budgets
        return _counted(len(section.points) if section else 0, "budget")

    @property
    def orders_said(self):
        """What is approved, as the button names it: 2 orders."""
        return _counted(len(self.tables), "order")

    @property
    def later_said(self):
        return f"{self._mean(sum(line.cost for line in self.report.later))} a season"

    @property
    def left_out_said(self):
        return f"{self._mean(sum(gap.lost for gap in self.report.shortages))} a season"

    def _mean(self, value):
        return f"about {sum_words(value, self.report.money)}"

    @property
    def answers_said(self):
        own = sum(row.own for row in self.report.assumptions)
        return f"{own} of {_counted(len(self.report.assumptions), 'answer')} own"


def order_page(report):
    tables = tuple(
        SupplierTable(order=order, rows=tuple(_row(line) for line in order.lines)) for order in report.orders
    )
    suppliers = len({order.supplier for order in report.orders})
    return OrderPage(
        report=report,
        tables=tables,
        budget_line=budget_line(report.spend, report.budget),
        budget_said=_budget_said(report),
        spend_said=_sum(report.spend, report.money),
        count_said=f"{_counted(len(report.lines), 'line')}, {_counted(suppliers, 'supplier')}",
        order_by=report.order_by,
        trial_chart=trial_chart(report.trial) if report.trial else None,
        bad_years_chart=bad_years_chart(report.bad_years, report.money) if report.bad_years else None,
        budget_chart=budget_chart(report.budgets, report.money) if report.budgets else None,
        beliefs_chart=beliefs_chart(report.beliefs, report.money) if report.beliefs else None,
    )


def _counted(count, noun):
    return f"{count} {noun}" if count == 1 else f"{count} {noun}s"


def _budget_said(report):
    if report.budget is None:
        return "no limit set"
    left = _sum(report.budget - report.spend, report.money)
    return f"{_sum(report.budget, report.money)}, of it {left} unspent"


def _sum(value, money):
    """Cents only where there are any."""
    return sum_words(value, money, cents_too=value != int(value))


def _row(line):
    first, *more = line.parts
    a_pack = first.units // line.packs if line.packs else 0
    if more:
        packs = str(line.packs)
        brings = ", ".join(f"{amount(part.units, part.unit)} {part.name}" for part in line.parts)
    else:
        packs = f"{line.packs} of {number(a_pack)}" if a_pack > 1 else str(line.packs)
        brings = first.name if first.unit == "piece" else f"{first.name}, by the {first.unit}"
    if brings.lower() == line.name.lower():
        brings = ""
    return OrderRow(
        line=line,
        packs=packs,
        units="" if more else number(first.units),
        brings=brings,
        each=(line.cost / (line.packs if more else first.units)).quantize(Decimal("0.01")),
        need=_need(line),
    )


def _need(line):
    peak, owned = line.why.peak, line.why.owned
    if peak is None:
        return None
    sound = sum(each.sound for each in owned)
    spare = sum(each.spare_on_colonies for each in owned)
    coming = sum(each.on_order for each in owned) + peak.returned
    to_mend = sum(each.to_mend for each in owned)
    drawn = need_ruler(
        sound=sound + spare, coming=coming, to_mend=to_mend, need=peak.mean, low=peak.low, high=peak.high
    )
    if drawn is None:
        return None
    missing = peak.mean - sound - spare - coming
    return NeedWords(
        ruler=drawn,
        head=f"{line.parts[0].name}, {peak.words}",
        short=f"{number(missing)} missing in an ordinary year"
        if missing > 0
        else "enough in an ordinary year",
        said=_owned_said(sound, spare, coming, to_mend)
        + f" The season asks for {number(peak.mean)}, mostly {number(peak.low)} to {number(peak.high)}.",
    )


def _owned_said(sound, spare, coming, to_mend):
    words = [f"{number(sound)} sound in store"]
    if spare:
        words.append(f"{number(spare)} to spare on colonies")
    if coming:
        words.append(f"{number(coming)} on order or coming back from deadouts")
    if to_mend:
        words.append(f"{number(to_mend)} to mend")
    return f"Owned: {', '.join(words)}."
