"""The sheet Why: a row a line with the figures its reason rests on, and the reason itself.

Takes the sheet and the report. What is owned is told of the line's part and all that is made of it.
"""

from planner.plan.words import listed
from planner.workbook.cells import (
    COUNT,
    TITLE,
    WRAP,
    figure,
    head_row,
    lines_of,
    prints,
    rule,
    text,
    widths,
)

HEADS = (
    "No.",
    "Piece",
    "Units",
    "Sound in store",
    "To mend",
    "Held back",
    "On the way",
    "On colonies",
    "Asked for, mean",
    "Nine of ten at least",
    "Nine of ten at most",
    "Most in use",
    "Deadouts give back",
    "Short in … of 100 without",
    "Reason",
)
REASON = len(HEADS)
REASON_WIDTH, PIECE_WIDTH = 74, 26


def write_why(sheet, report, paper):
    text(sheet, 1, 1, "Why each line", font=TITLE)
    head_row(sheet, 2, HEADS, right=(1, *range(3, 12), 13, 14))
    sheet.row_dimensions[2].height = 46
    row = 3
    for line in report.lines:
        _line(sheet, row, line)
        row += 1
    widths(sheet, 5, PIECE_WIDTH, 8, 8, 8, 8, 8, 10, 10, 10, 10, 13, 10, 12, REASON_WIDTH)
    sheet.freeze_panes = "C3"
    prints(sheet, wide=True, paper=paper, repeat=2, last_column=REASON, last_row=row - 1, foot="Winter order")


def _line(sheet, row, line):
    why, peak = line.why, line.why.peak
    owned = [
        sum(getattr(each, kind) for each in why.owned)
        for kind in ("sound", "to_mend", "held", "on_order", "on_colonies")
    ]
    figure(sheet, row, 1, line.number, COUNT)
    text(sheet, row, 2, line.name, wrap=True)
    figure(sheet, row, 3, line.parts[0].units if len(line.parts) == 1 else None, COUNT)
    asked = [peak.mean, peak.low, peak.high] if peak else [None] * 3
    for column, value in enumerate((*owned, *asked), 4):
        figure(sheet, row, column, value, COUNT)
    text(sheet, row, 12, _when(peak), align=WRAP)
    figure(sheet, row, 13, peak.returned if peak else None, COUNT)
    figure(sheet, row, 14, why.short_in_100, COUNT)
    text(sheet, row, REASON, why.text, wrap=True)
    tall = max(lines_of(why.text, REASON_WIDTH), lines_of(line.name, PIECE_WIDTH), lines_of(_when(peak), 13))
    sheet.row_dimensions[row].height = 15 * tall + 3
    rule(sheet, row, REASON)


def _when(peak):
    if peak is None:
        return ""
    return f"{peak.words}, {listed(peak.yards, most=2, rest='more')}" if peak.yards else peak.words
