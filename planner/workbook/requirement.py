"""The sheet Requirement: pieces asked for by week (down) and part (across): all yards, most years, each yard.

Takes the sheet and the report. The mean of all yards is the sum of the yards' rows, as a formula.
"""

from openpyxl.styles import Alignment
from openpyxl.utils import get_column_letter
from openpyxl.worksheet.pagebreak import Break

from planner.plan.words import week_day
from planner.workbook.cells import (
    BOLD,
    COUNT,
    DAY,
    QUIET,
    TENTH,
    THIN,
    TITLE,
    figure,
    formula,
    head_row,
    prints,
    rule,
    text,
    widths,
)

FIXED = 3  # where, week, starts on
HEAD = 3


def write_requirement(sheet, report, paper):
    parts = list(dict.fromkeys(row.part for row in report.requirement))
    names = {row.part: row.name for row in report.requirement}
    text(sheet, 1, 1, "Gear asked for by week", font=TITLE)
    said = (
        "Over and above what stands on the colonies; what is used up is counted on from the week it is used."
    )
    text(sheet, 2, 1, said, font=QUIET)
    columns = FIXED + len(parts)
    head_row(
        sheet,
        HEAD,
        ("Where", "Week", "Starts on", *(names[part] for part in parts)),
        right=range(2, columns + 1),
    )
    for column in range(FIXED + 1, columns + 1):
        sheet.cell(HEAD, column).alignment = Alignment(
            text_rotation=90, horizontal="center", vertical="bottom"
        )
    sheet.row_dimensions[HEAD].height = 8 + 5.6 * max([len(name) for name in names.values()], default=6)
    rows = _rows(sheet, report, parts)
    widths(sheet, 24, 7, 13, *[7] * len(parts))
    sheet.freeze_panes = sheet.cell(HEAD + 1, FIXED + 1)
    if rows > HEAD:
        sheet.auto_filter.ref = f"A{HEAD}:{get_column_letter(columns)}{rows}"
    prints(
        sheet,
        wide=len(parts) > 12,
        paper=paper,
        repeat=HEAD,
        last_column=columns,
        last_row=rows,
        foot="Winter order",
    )


def _rows(sheet, report, parts):
    """Two blocks for all yards, then one a yard; a page break after each."""
    curves = {(row.yard, row.part): row for row in report.requirement}
    yards = sorted({(row.yard_name, row.yard) for row in report.requirement if row.yard})
    weeks = len(report.requirement[0].mean) if report.requirement else 0
    blocks = [("All yards, mean", "", "mean"), ("All yards, nine seasons of ten at most", "", "high")]
    blocks += [(name, yard, "mean") for name, yard in yards]
    if not weeks:
        return HEAD
    first_yard = HEAD + 1 + 2 * weeks
    last = HEAD + len(blocks) * weeks
    row = HEAD + 1
    for number, (words, yard, kind) in enumerate(blocks):
        for week in range(weeks):
            _where(sheet, row, words, week, report.day, bold=number == 0)
            for column, part in enumerate(parts, FIXED + 1):
                if number == 0:
                    letter = get_column_letter(column)
                    span = f"${letter}${first_yard}:${letter}${last},$B${first_yard}:$B${last},$B{row}"
                    _sum(sheet, row, column, span)
                elif curve := curves.get((yard, part)):
                    figure(sheet, row, column, getattr(curve, kind)[week], TENTH)
            row += 1
        rule(sheet, row - 1, FIXED + len(parts), THIN)
        sheet.row_breaks.append(Break(id=row - 1))
    return last


def _where(sheet, row, words, week, day, *, bold):
    text(sheet, row, 1, words, font=BOLD if bold else None)
    figure(sheet, row, 2, week, COUNT)
    figure(sheet, row, 3, week_day(day, week), DAY)


def _sum(sheet, row, column, span):
    values, weeks, week = span.split(",")
    formula(sheet, row, column, f"SUMIF({weeks},{week},{values})", TENTH)
