"""The sheet Money: what each budget earns, with its chart; what the next hundred earns, and what to drop with less.

Takes the sheet and the report's section on other budgets. What a hundred more earns between two budgets is a formula
over their rows.
"""

from inventory.printed.cells import (
    BESIDE,
    BOLD,
    COUNT,
    figure,
    formula,
    head_row,
    lines_of,
    money_format,
    rule,
    text,
)
from planner.workbook.page import curve, ends, opens, said

HEADS = (
    "Budget",
    "Spent",
    "Earned over the smallest",
    "No order earns more than",
    "A hundred more earns",
    "",
)
WIDTHS = (14, 14, 18, 18, 18, 26)
CHANGES = ("Line", "", "", "Packs now", "Packs then", "What to do")


def write_money(sheet, report, paper):
    section, money = report.budgets, money_format(report.money)
    first = opens(
        sheet,
        "Money",
        f"The best order known at each budget, in the mean of the {section.seasons:,} seasons it was planned with.",
        HEADS,
        right=range(1, len(HEADS)),
        beside=(len(HEADS),),
        tall=30,
    )
    for row, point in enumerate(section.points, first):
        _point(sheet, row, point, money, is_first=row == first)
    last = first + len(section.points) - 1
    row = last + 2
    if len(section.points) > 1:
        across, up = (1, "Budget"), (3, "Earned over the smallest budget, a season")
        row = curve(sheet, "What each budget earns", across, up, first=first, last=last, name="best order")
    for sentence in (*section.sentences, section.not_told):
        row = said(sheet, row, sentence, WIDTHS) if sentence else row
    if section.less is not None and section.less.changes:
        row = _less(sheet, row + 1, section.less, money)
    ends(sheet, WIDTHS, last_row=row - 1, paper=paper, wide=False, repeat=2)


def _point(sheet, row, point, money, *, is_first):
    font = BOLD if point.chosen or point.knee else None
    for column, value in enumerate((point.budget, point.spend, point.gain, point.most), 1):
        figure(sheet, row, column, value, money, font=font)
    if not is_first:
        formula(sheet, row, 5, f"100*(C{row}-C{row - 1})/(A{row}-A{row - 1})", money, font=font)
    words = ["this order's budget"] * point.chosen + ["the curve bends here"] * point.knee
    text(sheet, row, len(HEADS), "; ".join(words), font=font, align=BESIDE)
    rule(sheet, row, len(HEADS))


def _less(sheet, row, less, money):
    """What changes with the smaller budget, a row a line; gives the next row."""
    text(sheet, row, 1, "If the budget were less", font=BOLD)
    for at, (words, value) in enumerate((("Budget", less.budget), ("Lost a season", less.lost)), row + 1):
        text(sheet, at, 1, words)
        figure(sheet, at, 2, value, money)
    row += 4
    head_row(sheet, row, CHANGES, right=(4, 5), beside=(6,))
    for change in less.changes:
        row += 1
        sheet.merge_cells(start_row=row, start_column=1, end_row=row, end_column=3)
        text(sheet, row, 1, change.name, wrap=True)
        figure(sheet, row, 4, change.before, COUNT)
        figure(sheet, row, 5, change.after, COUNT)
        text(sheet, row, 6, change.said, align=BESIDE)
        tall = max(lines_of(change.name, sum(WIDTHS[:3]) - 2), lines_of(change.said, WIDTHS[5] - 2))
        sheet.row_dimensions[row].height = 14 * tall + 2
        rule(sheet, row, len(CHANGES))
    return row + 1
