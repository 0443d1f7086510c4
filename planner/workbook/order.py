"""The sheet Order: one block a supplier, each total a formula, fees, sums and the grand total too.

Takes the sheet and the report; gives the cells that hold each supplier's sums and the grand total.
"""

from dataclasses import dataclass

from openpyxl.styles import Border

from inventory.printed.cells import (
    BESIDE,
    BOLD,
    COUNT,
    DAY,
    HEAD,
    QUIET,
    THIN,
    figure,
    formula,
    lines_of,
    money_format,
    rule,
    text,
)
from planner.plan.words import capital, day_words
from planner.workbook.page import ends, opens

HEADS = ("No.", "Piece", "Packs", "Units", "Unit", "Price a pack", "Total", "Can wait to", "Note")
WIDTHS = (5, 44, 8, 9, 10, 13, 14, 14, 50)
NUMBER, PIECE, PACKS, UNITS, UNIT, PRICE, TOTAL, BY, NOTE = range(1, 10)


@dataclass(frozen=True, kw_only=True)
class Sums:
    """Cells of the sheet Order, by supplier order in the report's order."""

    goods: tuple[str, ...]
    fees: tuple[str, ...]
    totals: tuple[str, ...]
    grand: str


def write_order(sheet, report, paper):
    money = money_format(report.money)
    row = opens(
        sheet,
        "Winter order",
        f"As of {day_words(report.day)}",
        HEADS,
        right=(NUMBER, PACKS, UNITS, PRICE, TOTAL, BY),
        beside=(PIECE, UNIT, NOTE),
    )
    goods, fees, totals = [], [], []
    for order in report.orders:
        row, cells = _block(sheet, row, order, money)
        goods.append(cells[0])
        fees.append(cells[1])
        totals.append(cells[2])
    grand = _grand(sheet, row, totals, money)
    ends(sheet, WIDTHS, last_row=row, paper=paper, wide=True, frozen="C4")
    return Sums(goods=tuple(goods), fees=tuple(fees), totals=tuple(totals), grand=grand)


def _block(sheet, row, order, money):
    text(sheet, row, NUMBER, order.name, font=HEAD)
    said = f"Order by {day_words(order.order_by)}, due {day_words(order.due_on)}"
    text(sheet, row, NOTE, said, font=QUIET, align=BESIDE)
    sheet.row_dimensions[row].height = 24
    first = row = row + 1
    for line in order.lines:
        row = _line(sheet, row, line, money)
    last = row - 1
    rule(sheet, last, NOTE, THIN)
    text(sheet, row, PIECE, "Goods", align=BESIDE)
    formula(sheet, row, TOTAL, f"SUM(G{first}:G{last})", money)
    text(sheet, row + 1, PIECE, "Shipping", align=BESIDE)
    figure(sheet, row + 1, TOTAL, order.fee, money)
    text(sheet, row + 1, NOTE, order.fee_note, font=QUIET, align=BESIDE)
    text(sheet, row + 2, PIECE, "Sum", font=BOLD, align=BESIDE)
    formula(sheet, row + 2, TOTAL, f"G{row}+G{row + 1}", money, font=BOLD)
    return row + 4, (f"G{row}", f"G{row + 1}", f"G{row + 2}")


def _line(sheet, row, line, money):
    figure(sheet, row, NUMBER, line.number, COUNT)
    text(sheet, row, PIECE, line.name, align=BESIDE)
    figure(sheet, row, PACKS, line.packs, COUNT)
    if len(line.bill) == 1:
        figure(sheet, row, PRICE, line.price, money)
        formula(sheet, row, TOTAL, f"C{row}*F{row}", money)
    else:
        steps = "+".join(f"{each.packs}*{each.price}" for each in line.bill)
        formula(sheet, row, PRICE, f"G{row}/C{row}", money)
        formula(sheet, row, TOTAL, steps, money)
    figure(sheet, row, BY, line.order_by, DAY)
    text(sheet, row, NOTE, _note(line), font=QUIET, align=BESIDE)
    kit = len(line.parts) > 1
    for number, part in enumerate(line.parts):
        at = row + number + (1 if kit else 0)
        if kit:
            text(sheet, at, PIECE, f"    of it: {part.name}", font=QUIET, align=BESIDE)
        figure(sheet, at, UNITS, part.units, COUNT)
        text(sheet, at, UNIT, part.unit, align=BESIDE)
    tall = max(lines_of(line.name, WIDTHS[PIECE - 1] - 2), lines_of(_note(line), WIDTHS[NOTE - 1] - 2))
    sheet.row_dimensions[row].height = 14 * tall + 2
    row += len(line.parts) + (1 if kit else 0)
    rule(sheet, row - 1, NOTE)
    return row


def _note(line):
    said = capital(line.order_by_why)
    return f"{said}; {line.price_note}" if line.price_note else said


def _grand(sheet, row, totals, money):
    text(sheet, row, PIECE, "All orders, shipping included", font=HEAD, align=BESIDE)
    sheet.row_dimensions[row].height = 22
    cell = formula(sheet, row, TOTAL, "+".join(totals) if totals else "0", money, font=HEAD)
    for column in range(1, NOTE + 1):
        sheet.cell(row, column).border = Border(top=THIN, bottom=THIN)
    return cell.coordinate
