"""The sheet Beliefs: every answer lower and higher, what this order then loses, and how to find out.

Takes the sheet and the report's section. The dearer end of each answer is a formula over its two rows.
"""

from inventory.printed.cells import BESIDE, BOLD, COUNT, figure, formula, lines_of, money_format, rule, text
from planner.plan.words import capital
from planner.workbook.page import ends, opens, said

HEADS = (
    "Answer",
    "Taken as",
    "Were it",
    "Lost",
    "At most",
    "Spends more",
    "Lines changed",
    "Dearer end",
    "How to find out",
    "Span from",
)
WIDTHS = (34, 14, 14, 12, 12, 13, 10, 12, 52, 40)
FIGURES = (4, 5, 6, 7, 8)


def write_beliefs(sheet, report, paper):
    section, money = report.beliefs, money_format(report.money)
    row = opens(
        sheet,
        "Beliefs",
        f"What this order loses against the best were an answer otherwise, on the {section.seasons:,} seasons planned with.",
        HEADS,
        right=FIGURES,
        beside=(9,),
        tall=30,
    )
    for belief in section.rows:
        row = _belief(sheet, row, belief, section, money)
    row += 1
    for sentence in section.sentences:
        row = said(sheet, row, sentence, WIDTHS)
    ends(sheet, WIDTHS, last_row=row - 1, paper=paper, wide=True, frozen="B4")


def _belief(sheet, row, belief, section, money):
    font = BOLD if belief.key in section.first else None
    text(sheet, row, 1, capital(belief.name), wrap=True, font=font)
    text(sheet, row, 2, belief.answered, wrap=True)
    last = row + len(belief.ends) - 1
    formula(sheet, row, 8, f"MAX(D{row}:D{last})", money, font=font)
    text(sheet, row, 9, belief.find_out, align=BESIDE)
    text(sheet, row, 10, belief.source, wrap=True)
    tall = max(lines_of(belief.find_out, WIDTHS[8] - 2), lines_of(belief.source, WIDTHS[9]))
    for at, end in enumerate(belief.ends, row):
        text(sheet, at, 3, end.words, wrap=True)
        for column, value in enumerate((end.regret, end.regret_most, end.spend), 4):
            figure(sheet, at, column, value, money)
        figure(sheet, at, 7, len(end.changes), COUNT)
    sheet.row_dimensions[row].height = 14 * tall + 2
    rule(sheet, last, len(HEADS))
    return last + 1
