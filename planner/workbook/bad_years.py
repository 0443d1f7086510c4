"""The sheet Bad years: the mean season against the worst seasons, weight by weight, with its chart.

Takes the sheet and the report's curve. What each weight costs and gains is a formula over its row and the first.
"""

from inventory.printed.cells import BESIDE, BOLD, figure, formula, money_format, rule, text
from planner.plan.words import percent
from planner.workbook.page import curve, ends, opens, said

WHOLE_SHARE = "0%"
WIDTHS = (18, 14, 16, 18, 20, 20, 16)


def write_bad_years(sheet, report, paper):
    section = report.bad_years
    money = money_format(report.money)
    worst = f"Mean of the worst {percent(section.share)}"
    first = opens(
        sheet,
        "Bad years",
        f"The best order at each weight on bad years, judged on the same {section.seasons:,} seasons it was planned with.",
        ("Weight", "Spent now", "Mean season", worst, "Mean given up", "Bad years gain", ""),
        right=range(1, len(WIDTHS)),
        tall=30,
    )
    for row, point in enumerate(section.points, first):
        font = BOLD if point.chosen else None
        figure(sheet, row, 1, point.weight, WHOLE_SHARE, font=font)
        for column, value in enumerate((point.spend, point.mean, point.bad_years), 2):
            figure(sheet, row, column, value, money, font=font)
        formula(sheet, row, 5, f"C${first}-C{row}", money, font=font)
        formula(sheet, row, 6, f"D{row}-D${first}", money, font=font)
        text(sheet, row, 7, "this order" if point.chosen else "", font=font, align=BESIDE)
        rule(sheet, row, len(WIDTHS))
    row = curve(
        sheet,
        "Mean season against bad years",
        (4, worst),
        (3, "Mean season"),
        first=first,
        last=first + len(section.points) - 1,
        name="orders",
    )
    for sentence in section.sentences:
        row = said(sheet, row, sentence, WIDTHS)
    ends(sheet, WIDTHS, last_row=row - 1, paper=paper, wide=False, repeat=2)
