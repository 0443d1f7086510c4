"""The sheet Why: for each line a row of the figures its reason rests on, and the reason under it.

Takes the sheet and the report. What is owned is told of the line's part and of all that is made of it.
"""

from inventory.printed.cells import BESIDE, BOLD, COUNT, HAIR, figure, lines_of, money_format, rule, text
from planner.plan.words import places
from planner.workbook.page import ends, opens

HEADS = (
    "No.",
    "Piece",
    "Units bought",
    "Sound in store",
    "To mend",
    "Held back",
    "On the way",
    "On colonies",
    "Asked for, mean",
    "Nine of ten at least",
    "Nine of ten at most",
    "Deadouts give back",
    "Short in … of 100 without",
    "One pack more costs",
    "and earns",
    "One fewer saves",
    "and loses",
    "Most in use",
)
WIDTHS = (5, 30, 8, 8, 8, 8, 8, 9, 9, 9, 9, 10, 10, 11, 11, 11, 11, 26)
WHEN = len(HEADS)
MORE = HEADS.index("One pack more costs") + 1


def write_why(sheet, report, paper):
    money = money_format(report.money)
    row = opens(
        sheet,
        "Why each line",
        "What you have is told of the piece and of all that is made of it; seasons of 100 with the rest of the order bought.",
        HEADS,
        right=(1, *range(3, WHEN)),
        beside=(2, WHEN),
        tall=42,
    )
    for line in report.lines:
        _figures(sheet, row, line)
        _moves(sheet, row, line.why.moves, money)
        _reason(sheet, row + 1, line.why.text)
        row += 2
    ends(sheet, WIDTHS, last_row=row - 1, paper=paper, wide=True, frozen="C4")


def _figures(sheet, row, line):
    why, peak = line.why, line.why.peak
    owned = [
        sum(getattr(each, kind) for each in why.owned)
        for kind in ("sound", "to_mend", "held", "on_order", "on_colonies")
    ]
    figure(sheet, row, 1, line.number, COUNT, font=BOLD)
    text(sheet, row, 2, line.name, font=BOLD, align=BESIDE)
    figure(sheet, row, 3, line.parts[0].units if len(line.parts) == 1 else None, COUNT, font=BOLD)
    asked = [peak.mean, peak.low, peak.high, peak.returned] if peak else [None] * 4
    for column, value in enumerate((*owned, *asked, why.short_in_100), 4):
        figure(sheet, row, column, value, COUNT)
    when = _when(peak)
    text(sheet, row, WHEN, when, align=BESIDE)
    tall = max(lines_of(line.name, WIDTHS[1] - 2), lines_of(when, WIDTHS[-1] - 2))
    sheet.row_dimensions[row].height = 14 * tall + 2


def _moves(sheet, row, moves, money):
    """A pack more and a pack fewer, the other lines as they are; nothing where it cannot be."""
    for move in moves:
        if move.can_be:
            first = MORE if move.step > 0 else MORE + 2
            figure(sheet, row, first, move.cost * move.step, money)
            figure(sheet, row, first + 1, move.earned * move.step, money)


def _reason(sheet, row, words):
    sheet.merge_cells(start_row=row, start_column=2, end_row=row, end_column=WHEN)
    text(sheet, row, 2, words, align=BESIDE)
    sheet.row_dimensions[row].height = 14 * lines_of(words, sum(WIDTHS[1:])) + 5
    rule(sheet, row, WHEN, HAIR)


def _when(peak):
    if peak is None:
        return ""
    return peak.words + places(peak.yards)
