"""The sheet Summary: what, how much, by when, how good, what stays open, and the cautions.

Takes the sheet, the report and the cells of the sheet Order; money sums are formulas over them.
"""

from inventory.printed.cells import (
    BOLD,
    BRICK,
    COUNT,
    DAY,
    HEAD,
    SHARE,
    TENTH,
    THIN,
    figure,
    formula,
    head_row,
    lines_of,
    money_format,
    rule,
    text,
    title,
)
from planner.plan.words import capital, day_words, places
from planner.workbook.page import ends, said

COLUMNS = (34, 15, 15, 15, 16)


class Sheet:
    """The summary being written, top down."""

    def __init__(self, sheet, report, sums):
        self.sheet, self.report, self.sums = sheet, report, sums
        self.money, self.row = money_format(report.money), 1

    def head(self, words):
        self.row += 1
        text(self.sheet, self.row, 1, words, font=HEAD)
        self.row += 1

    def said(self, words, *, font=None):
        """A sentence over the whole width, as tall as it needs."""
        self.row = said(self.sheet, self.row, words, COLUMNS, font=font)

    def table(self, heads, rows, styles):
        """`styles`: a number format for figures, None for text; a text row `=` is a formula of ours."""
        head_row(self.sheet, self.row, heads, right=range(2, len(heads) + 1))
        self.row += 1
        for values in rows:
            for column, (value, style) in enumerate(zip(values, styles, strict=True), 1):
                self.put(column, value, style)
            self.sheet.row_dimensions[self.row].height = 14 * lines_of(values[0], COLUMNS[0] - 2) + 1
            rule(self.sheet, self.row, len(COLUMNS))
            self.row += 1

    def put(self, column, value, style, *, font=None):
        if style is None:
            text(self.sheet, self.row, column, value, wrap=True, font=font)
        elif isinstance(value, Formula):
            formula(self.sheet, self.row, column, value.expression, style, font=font)
        elif value is not None:
            figure(self.sheet, self.row, column, value, style, font=font)

    def pair(self, words, value, style, *, font=None):
        text(self.sheet, self.row, 1, words, font=font)
        self.put(2, value, style, font=font)
        rule(self.sheet, self.row, 2)
        self.row += 1


class Formula:
    def __init__(self, expression):
        self.expression = expression


def write_summary(sheet, report, sums, paper):
    page = Sheet(sheet, report, sums)
    title(sheet, "Winter order", f"As of {day_words(report.day)}")
    page.row = 3
    page.said(report.headline, font=BOLD)
    for missing in report.no_offers:
        page.said(missing.text, font=BRICK)
    _money(page)
    _suppliers(page)
    _standing(page)
    _open(page)
    if report.cautions:
        page.head("Cautions")
        for caution in report.cautions:
            page.said(f"{caution.head}. {caution.text}")
    ends(sheet, COLUMNS, last_row=page.row, paper=paper, wide=False, repeat=2, frozen="A3")


def _money(page):
    report, sums = page.report, page.sums
    page.head("Money")
    if report.order_by:
        page.pair("First order out by", report.order_by, DAY)
    page.pair("Goods", Formula(_plus(sums.goods)), page.money)
    page.pair("Shipping", Formula(_plus(sums.fees)), page.money)
    total = page.row
    page.pair("Order in all", Formula(f"Order!{sums.grand}"), page.money, font=BOLD)
    if report.budget is not None:
        page.pair("Budget", report.budget, page.money)
        page.pair("Left of it", Formula(f"B{page.row - 1}-B{total}"), page.money)
    if report.later:
        page.pair("Bought in season, mean", report.later_spend, page.money)


def _plus(cells):
    return "+".join(f"Order!{cell}" for cell in cells) or "0"


def _suppliers(page):
    if not page.report.orders:
        return
    page.head("Suppliers")
    rows = [
        (order.name, len(order.lines), order.order_by, order.due_on, Formula(f"Order!{cell}"))
        for order, cell in zip(page.report.orders, page.sums.totals, strict=True)
    ]
    page.table(("Supplier", "Lines", "Order by", "Due", "Sum"), rows, (None, COUNT, DAY, DAY, page.money))


def _standing(page):
    standing = page.report.standing
    page.head("How good it is")
    page.said(standing.said)
    if standing.worth is None:
        return
    rows = [("This order", page.report.spend, standing.worth, standing.bad_year, None)]
    rows += [
        (capital(rival.name), rival.spend, rival.worth, rival.bad_year, rival.gain)
        for rival in standing.rivals
    ]
    heads = (
        "Season's worth, gear left over counted",
        "Spent now",
        "Mean season",
        "Worst of twenty",
        "This order gains",
    )
    page.table(heads, rows, (None, *[page.money] * 4))
    for sentence in standing.sentences:
        page.said(sentence)
    if standing.gap_share is not None:
        page.pair("Proven gap", standing.gap_share, SHARE)
    page.pair("Seasons planned with", standing.seasons, COUNT)


def _open(page):
    report = page.report
    if report.later:
        page.head("Bought in season, as the year shows its need")
        rows = [
            (line.name, line.in_100, line.units[0].units if line.units else None, None, line.cost)
            for line in report.later
        ]
        heads = ("Piece", "Seasons of 100", "Units, mean", "", "Cost, mean")
        page.table(heads, rows, (None, COUNT, COUNT, COUNT, page.money))
    if report.shortages:
        page.head("Left out, and what it would be worth")
        rows = [
            (row.what + places(row.yards), row.in_100, row.wanted, row.left_out, row.lost)
            for row in report.shortages
        ]
        heads = ("Use", "Seasons of 100", "Wanted, mean", "Left out, mean", "Worth, mean")
        page.table(heads, rows, (None, COUNT, TENTH, TENTH, page.money))
        row = page.row
        text(page.sheet, row, 1, "Sum", font=BOLD)
        first, last = row - len(rows), row - 1
        formula(page.sheet, row, 5, f"SUM(E{first}:E{last})", page.money, font=BOLD)
        rule(page.sheet, row, len(COLUMNS), THIN)
        page.row += 1
