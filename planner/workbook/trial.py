"""The sheet Trial: each order on the fresh seasons, and what that tells.

Takes the sheet and the report's trial; figures are rounded to what the seasons tried bear.
"""

from inventory.printed.cells import BOLD, COUNT, figure, formula, head_row, lines_of, money_format, rule, text
from planner.plan.words import capital
from planner.workbook.page import ends, opens, said

HEADS = (
    "Order",
    "Spent now",
    "Mean season",
    "Give or take",
    "Worst of twenty",
    "More than the order compared with",
    "Give or take",
    "19 seasons of 20: from",
    "to",
    "Seasons tried",
)
WIDTHS = (46, 13, 13, 12, 14, 16, 12, 16, 13, 10)


def write_trial(sheet, report, paper):
    trial = report.trial
    money = money_format(report.money)
    row = opens(
        sheet,
        "Trial on fresh seasons",
        f"{trial.seasons:,} seasons nobody planned with, the same for every order; compared with {trial.against_name}.",
        HEADS,
        right=range(2, len(HEADS) + 1),
        tall=42,
    )
    for each in trial.rows:
        _order(sheet, row, each, trial, money)
        row += 1
    row += 1
    for sentence in trial.sentences:
        row = said(sheet, row, sentence, WIDTHS)
    if trial.by_yard is not None:
        row = _by_yard(sheet, row + 1, trial.by_yard, money)
    ends(sheet, WIDTHS, last_row=row - 1, paper=paper, wide=True, frozen="B4")


def _order(sheet, row, each, trial, money):
    font = BOLD if each.key == "ours" else None
    words = f"{capital(each.name)}: {each.how}"
    text(sheet, row, 1, words, wrap=True, font=font)
    against = each.key == trial.against
    values = (
        each.spend,
        each.worth,
        each.worth_reach,
        each.bad_year,
        None if against else each.over,
        None if against else each.over_reach,
        None if against else each.low,
        None if against else each.high,
    )
    for column, value in enumerate(values, 2):
        figure(sheet, row, column, value, money, font=font)
    figure(sheet, row, len(HEADS), each.seasons, COUNT, font=font)
    sheet.row_dimensions[row].height = 14 * lines_of(words, WIDTHS[0] - 2) + 3
    rule(sheet, row, len(HEADS))


def _by_yard(sheet, row, judged, money):
    """The yard form's judgement: both worths, their difference a formula, and the sentence. Gives the next row."""
    if judged.by_yard is not None:
        heads = ("Hauling told yard by yard", "Told by yard", "As one pool", "Pool more")
        head_row(sheet, row, heads, right=range(2, len(heads) + 1))
        text(sheet, row + 1, 1, "This order, mean season")
        figure(sheet, row + 1, 2, judged.by_yard, money)
        figure(sheet, row + 1, 3, judged.pooled, money)
        formula(sheet, row + 1, 4, f"C{row + 1}-B{row + 1}", money)
        figure(sheet, row + 1, len(HEADS), judged.seasons, COUNT)
        rule(sheet, row + 1, len(HEADS))
        row += 2
    return said(sheet, row, judged.said, WIDTHS)
