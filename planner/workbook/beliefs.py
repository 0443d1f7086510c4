"""The sheet Beliefs: every answer lower and higher, what this order then loses, and how to find out.

Takes the sheet and the report's section. The dearer end of each answer is a formula over its two rows.
"""

from inventory.printed.cells import (
    BESIDE,
    BOLD,
    COUNT,
    QUIET,
    figure,
    formula,
    head_row,
    lines_of,
    money_format,
    prints,
    rule,
    text,
    title,
    widths,
)

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
    title(
        sheet,
        "Beliefs",
        f"What this order loses against the best were an answer otherwise, on the {section.seasons:,} seasons planned with.",
    )
    head_row(sheet, 3, HEADS, right=FIGURES, beside=(9,))
    sheet.row_dimensions[3].height = 30
    row = 4
    for belief in section.rows:
        row = _belief(sheet, row, belief, section, money)
    for sentence in section.sentences:
        sheet.merge_cells(start_row=row + 1, start_column=1, end_row=row + 1, end_column=len(HEADS))
        text(sheet, row + 1, 1, sentence, wrap=True, font=QUIET)
        sheet.row_dimensions[row + 1].height = 14 * lines_of(sentence, sum(WIDTHS)) + 3
        row += 1
    widths(sheet, *WIDTHS)
    sheet.freeze_panes = "B4"
    prints(sheet, wide=True, paper=paper, repeat=3, last_column=len(HEADS), last_row=row)


def _belief(sheet, row, belief, section, money):
    font = BOLD if belief.key in section.first else None
    text(sheet, row, 1, belief.name[:1].upper() + belief.name[1:], wrap=True, font=font)
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
