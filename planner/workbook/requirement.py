"""The sheet Requirement: pieces asked for by week (down) and part (across): all yards, most years, each yard.

Takes the sheet and the report. Weeks in which a block asks for nothing are left out. The mean of all yards is the
sum of the yards' rows, as a formula.
"""

from openpyxl.styles import Alignment
from openpyxl.utils import get_column_letter
from openpyxl.worksheet.pagebreak import Break

from inventory.printed.cells import (
    COUNT,
    DAY,
    TENTH,
    THIN,
    figure,
    formula,
    head_row,
    prints,
    rule,
    text,
    title,
    widths,
)
from planner.plan.words import week_day

FIXED = 3  # where, week, starts on
HEAD = 3
LEAST_COLUMNS = 10  # so that a short list is not blown up to the width of the paper


def write_requirement(sheet, report, paper):
    parts = list(dict.fromkeys(row.part for row in report.requirement))
    names = {row.part: row.name for row in report.requirement}
    title(
        sheet,
        "Gear asked for by week",
        "Beside what colonies stand in. What is kept is counted in each week, what is used up in its own.",
    )
    columns = max(LEAST_COLUMNS, FIXED + len(parts))
    heads = ("Where", "Week", "Starts on", *(names[part] for part in parts))
    head_row(sheet, HEAD, heads, right=range(2, columns + 1))
    for column in range(FIXED + 1, FIXED + len(parts) + 1):
        cell = sheet.cell(HEAD, column)
        cell.alignment = Alignment(text_rotation=90, horizontal="center", vertical="bottom")
    sheet.row_dimensions[HEAD].height = 10 + 5.6 * max([len(name) for name in names.values()], default=6)
    last = _blocks(sheet, report, parts)
    widths(sheet, 34, 7, 13, *[7.5] * len(parts))
    sheet.freeze_panes = sheet.cell(HEAD + 1, FIXED + 1)
    if last > HEAD and parts:
        sheet.auto_filter.ref = f"A{HEAD}:{get_column_letter(FIXED + len(parts))}{last}"
    prints(sheet, wide=len(parts) > 8, paper=paper, repeat=HEAD, last_column=columns, last_row=last)


def _blocks(sheet, report, parts):
    """Two blocks for all yards, then one a yard; a page break after each. Gives the last row."""
    curves = {(row.yard, row.part): row for row in report.requirement}
    yards = sorted({(row.yard_name, row.yard) for row in report.requirement if row.yard})
    blocks = [("All yards, mean", "", "mean"), ("All yards, nine seasons of ten at most", "", "high")]
    blocks += [(name, yard, "mean") for name, yard in yards]
    weeks = {block: _weeks(curves, *block[1:]) for block in blocks}
    first_yard = HEAD + 1 + len(weeks[blocks[0]]) + len(weeks[blocks[1]])
    last = HEAD + sum(len(each) for each in weeks.values())
    row = HEAD + 1
    for block in blocks:
        for week in weeks[block]:
            _where(sheet, row, block[0], week, report.day)
            for column, part in enumerate(parts, FIXED + 1):
                if block is blocks[0]:
                    _sum(sheet, row, column, first_yard, last)
                elif curve := curves.get((block[1], part)):
                    figure(sheet, row, column, getattr(curve, block[2])[week], TENTH)
            row += 1
        if row <= last and weeks[block]:
            rule(sheet, row - 1, FIXED + len(parts), THIN)
            sheet.row_breaks.append(Break(id=row - 1))
    return last


def _weeks(curves, yard, kind):
    """Weeks in which the block asks for anything."""
    asked = [getattr(row, kind) for (at, _part), row in curves.items() if at == yard]
    return [week for week, values in enumerate(zip(*asked, strict=True)) if any(values)]


def _where(sheet, row, words, week, day):
    text(sheet, row, 1, words)
    figure(sheet, row, 2, week, COUNT)
    figure(sheet, row, 3, week_day(day, week), DAY)


def _sum(sheet, row, column, first, last):
    letter = get_column_letter(column)
    weeks, values = f"$B${first}:$B${last}", f"${letter}${first}:${letter}${last}"
    formula(sheet, row, column, f"SUMIF({weeks},$B{row},{values})", TENTH)
