"""One purchase order as a workbook to send: from whom, to whom, what, at which price, shipping and the total.

Takes a PurchaseOrder, gives the bytes of an .xlsx file. Where no price is known the supplier is asked for it: once a
price is typed into such a line its sum and the total follow. What people typed never becomes a formula.
"""

import datetime as dt
from dataclasses import dataclass
from decimal import Decimal

from openpyxl.styles import Alignment, Border

from inventory.printed.cells import (
    BESIDE,
    BOLD,
    COUNT,
    DAY,
    HEAD,
    PLAIN,
    QUIET,
    RIGHT,
    THIN,
    bytes_of,
    figure,
    formula,
    head_row,
    lines_of,
    money_format,
    new_book,
    paper_for,
    prints,
    rule,
    text,
    title,
    widths,
)

HEADS = ("No.", "Article", "Packs", "Units", "Unit", "Price a pack", "Sum")
WIDTHS = (5, 46, 8, 9, 10, 14, 15)
NUMBER, ARTICLE, PACKS, UNITS, UNIT, PRICE, SUM = range(1, 8)
BLOCKS = ((NUMBER, ARTICLE), (PACKS, UNITS), (UNIT, PRICE), (SUM, SUM))  # the cells under the addresses
QUOTE = "please quote"
IN_ALL = "for all packs"  # a price a pack would not be whole cents
LEFT = Alignment(vertical="top", horizontal="left", wrap_text=True)


@dataclass(frozen=True, kw_only=True)
class Party:
    """Keeper or supplier as on a letter."""

    name: str
    address: str = ""
    phone: str = ""
    email: str = ""

    @property
    def lines(self):
        """What is told of them, a printed line each."""
        told = (self.name, *self.address.splitlines(), self.phone, self.email)
        return tuple(line.strip() for line in told if line.strip())


@dataclass(frozen=True, kw_only=True)
class Content:
    """What a line brings of one part, all packs together."""

    name: str
    units: int
    unit: str


@dataclass(frozen=True, kw_only=True)
class AskedLine:
    """Packs of one article, in the supplier's words. `cost` of all packs; None where the price is asked for.

    `bill`: (packs, price) of each price step where packs of one line cost differently.
    """

    name: str
    packs: int
    contents: tuple[Content, ...]
    cost: Decimal | None
    bill: tuple[tuple[int, Decimal], ...] = ()

    def __post_init__(self):
        if self.bill and (sum(n for n, _ in self.bill), sum(n * each for n, each in self.bill)) != (
            self.packs,
            self.cost,
        ):
            raise ValueError(f"{self.name}: {self.bill} is not {self.packs} packs at {self.cost} in all")


@dataclass(frozen=True, kw_only=True)
class PurchaseOrder:
    """An order to one supplier, as it is sent."""

    reference: str
    day: dt.date
    wanted_by: dt.date
    money: str
    sender: Party
    supplier: Party
    lines: tuple[AskedLine, ...]
    fee: Decimal
    customer_number: str = ""
    note: str = ""

    @property
    def total(self):
        """Goods whose price is known, and shipping."""
        return self.fee + sum((line.cost for line in self.lines if line.cost is not None), Decimal(0))

    @property
    def asks(self):
        """How many lines ask for their price."""
        return sum(line.cost is None for line in self.lines)


def purchase_order(order, *, paper=None):
    """`paper`: A4 or Letter; left out, what is usual where the money is."""
    book = new_book()
    sheet = book.active
    sheet.title = "Purchase order"
    money = money_format(order.money)
    head = _letterhead(sheet, order)
    head_row(sheet, head, HEADS, right=(NUMBER, PACKS, UNITS, PRICE, SUM), beside=(ARTICLE, UNIT))
    row = head + 1
    for number, line in enumerate(order.lines, 1):
        row = _line(sheet, row, number, line, money)
    row = _sums(sheet, head + 1, row, order, money)
    last = _closing(sheet, row + 1, order)
    widths(sheet, *WIDTHS)
    sheet.freeze_panes = sheet.cell(head + 1, 1)
    prints(
        sheet,
        wide=False,
        paper=paper or paper_for(order.money),
        repeat_from=head,
        repeat=head,
        last_column=SUM,
        last_row=last,
        foot=f"{order.reference}, {order.sender.name}",
        middle="",
    )
    return bytes_of(book, name=f"Purchase order {order.reference}", day=order.day)


def _letterhead(sheet, order):
    """Addresses and the row of what identifies the order; gives the row of the table's heads."""
    title(sheet, "Purchase order", f"Prices and sums in {order.money}")
    for column, word, party in ((NUMBER, "From", order.sender), (PACKS, "To", order.supplier)):
        text(sheet, 4, column, word, font=QUIET)
        for row, line in enumerate(party.lines, 5):
            _across(sheet, row, (column, ARTICLE if column == NUMBER else SUM), line, bold=row == 5)
    row = 6 + max(len(order.sender.lines), len(order.supplier.lines), 1)
    told = (order.reference, order.day, order.wanted_by, order.customer_number or "none told")
    words = ("Reference", "Ordered on", "Wanted by", "Customer no.")
    for (first, last), word, value in zip(BLOCKS, words, told, strict=True):
        text(sheet, row, first, word, font=QUIET)
        _across(sheet, row + 1, (first, last), value)
    for column in range(NUMBER, SUM + 1):
        sheet.cell(row, column).border = Border(top=THIN)
        sheet.cell(row + 1, column).border = Border(bottom=THIN)
    return row + 3


def _across(sheet, row, columns, value, *, bold=False):
    """A text or a day over several columns, the row as tall as the tallest of them."""
    first, last = columns
    if first != last:
        sheet.merge_cells(start_row=row, start_column=first, end_row=row, end_column=last)
    if isinstance(value, dt.date):
        figure(sheet, row, first, value, DAY).alignment = LEFT
        return
    text(sheet, row, first, value, font=BOLD if bold else PLAIN, align=LEFT)
    tall = 14 * lines_of(value, sum(WIDTHS[first - 1 : last]) - 1) + 2
    sheet.row_dimensions[row].height = max(tall, sheet.row_dimensions[row].height or 0)


def _line(sheet, row, number, line, money):
    """One line: its price, or each of its price steps, or the question for it; what a kit holds under it."""
    figure(sheet, row, NUMBER, number, COUNT)
    text(sheet, row, ARTICLE, line.name, align=BESIDE)
    sheet.row_dimensions[row].height = 14 * lines_of(line.name, WIDTHS[ARTICLE - 1] - 3) + 2
    if len(line.contents) == 1:
        _content(sheet, row, line.contents[0])
    row = _prices(sheet, row, line, money)
    if len(line.contents) > 1:
        for part in line.contents:
            row += 1
            words = f"    of it: {part.name}"
            text(sheet, row, ARTICLE, words, font=QUIET, align=BESIDE)
            sheet.row_dimensions[row].height = 14 * lines_of(words, WIDTHS[ARTICLE - 1] - 3) + 1
            _content(sheet, row, part)
    rule(sheet, row, SUM)
    return row + 1


def _content(sheet, row, part):
    figure(sheet, row, UNITS, part.units, COUNT)
    text(sheet, row, UNIT, part.unit, align=BESIDE)


def _prices(sheet, row, line, money):
    """Packs, price and sum, a row for each price; gives the last row."""
    if line.cost is None:
        figure(sheet, row, PACKS, line.packs, COUNT)
        text(sheet, row, PRICE, QUOTE, font=QUIET, align=RIGHT).number_format = money
        formula(sheet, row, SUM, f"IF(ISNUMBER(F{row}),C{row}*F{row},0)", f"{money};")
        return row
    if not line.bill:
        figure(sheet, row, PACKS, line.packs, COUNT)
        text(sheet, row, PRICE, IN_ALL, font=QUIET, align=RIGHT)
        figure(sheet, row, SUM, line.cost, money)
        return row
    for at, (packs, price) in enumerate(line.bill, row):
        if at > row:
            text(sheet, at, ARTICLE, "    further packs", font=QUIET, align=BESIDE)
        figure(sheet, at, PACKS, packs, COUNT)
        figure(sheet, at, PRICE, price, money)
        formula(sheet, at, SUM, f"C{at}*F{at}", money)
    return row + len(line.bill) - 1


def _sums(sheet, first, row, order, money):
    """Goods, shipping and total; gives the row after them."""
    rule(sheet, row - 1, SUM, THIN)
    text(sheet, row, ARTICLE, "Goods", align=BESIDE)
    formula(sheet, row, SUM, f"SUM(G{first}:G{row - 1})", money)
    text(sheet, row + 1, ARTICLE, "Shipping", align=BESIDE)
    figure(sheet, row + 1, SUM, order.fee, money)
    words = f"Total, without what is to be quoted ({order.asks})" if order.asks else "Total"
    text(sheet, row + 2, ARTICLE, words, font=HEAD, align=BESIDE)
    formula(sheet, row + 2, SUM, f"G{row}+G{row + 1}", money, font=HEAD)
    sheet.row_dimensions[row + 2].height = 16 * lines_of(words, WIDTHS[ARTICLE - 1] - 12) + 6
    for column in range(NUMBER, SUM + 1):
        sheet.cell(row + 2, column).border = Border(top=THIN, bottom=THIN)
    return row + 3


def _closing(sheet, row, order):
    """The keeper's note and what is asked of the supplier; gives the last row."""
    said = [line for line in order.note.splitlines() if line.strip()]
    if order.asks:
        said.append("Please quote the lines without a price, and send them only once we have agreed.")
    said.append(
        "Please confirm this order, its prices, the shipping and the day it comes before you send it."
    )
    for words in said:
        sheet.merge_cells(start_row=row, start_column=NUMBER, end_row=row, end_column=SUM)
        text(sheet, row, NUMBER, words, wrap=True)
        sheet.row_dimensions[row].height = 14 * lines_of(words, sum(WIDTHS)) + 4
        row += 1
    return row - 1
