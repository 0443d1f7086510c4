"""The sheet Assumptions: every question of the season with the answer planned with, its default and its source.

Below them what was worked out and never asked.
"""

from inventory.printed.cells import BOLD, lines_of, rule, text
from planner.workbook.page import ends, opens

HEADS = ("About", "Question", "Answer", "Unit", "Default", "Whose", "Source")
WIDTHS = (10, 58, 16, 12, 16, 12, 58)


def write_assumptions(sheet, report, paper):
    row = opens(
        sheet,
        "Assumptions",
        "What the season was worked out with. A default that is wrong for you is worth mending.",
        HEADS,
    )
    for asked in report.assumptions:
        whose = "your answer" if asked.own else "default"
        values = (asked.group, asked.ask, asked.value, asked.unit, asked.default, whose, asked.source)
        _row(sheet, row, values, bold=asked.own)
        row += 1
    for worked in report.computed:
        _row(sheet, row, (worked.group, worked.name, worked.value, "", "", "worked out", worked.source))
        row += 1
    ends(sheet, WIDTHS, last_row=row - 1, paper=paper, wide=True)


def _row(sheet, row, values, *, bold=False):
    for column, value in enumerate(values, 1):
        text(sheet, row, column, value, wrap=True, font=BOLD if bold and column == 3 else None)
    tall = max(lines_of(value, width) for value, width in zip(values, WIDTHS, strict=True))
    sheet.row_dimensions[row].height = 14 * tall + 2
    rule(sheet, row, len(HEADS))
