"""The sheet Bad years: the mean season against the worst seasons, weight by weight, with its chart.

Takes the sheet and the report's curve. What each weight costs and gains is a formula over its row and the first.
"""

from openpyxl.chart import Reference, ScatterChart, Series

from inventory.printed.cells import (
    BESIDE,
    BOLD,
    INK,
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
from planner.plan.words import percent

WHOLE_SHARE = "0%"
WIDTHS = (18, 14, 16, 18, 20, 20, 16)
FIRST = 4


def write_bad_years(sheet, report, paper):
    curve = report.bad_years
    money = money_format(report.money)
    worst = f"Mean of the worst {percent(curve.share)}"
    title(
        sheet,
        "Bad years",
        f"The best order at each weight on bad years, judged on the same {curve.seasons:,} seasons it was planned with.",
    )
    heads = ("Weight", "Spent now", "Mean season", worst, "Mean given up", "Bad years gain", "")
    head_row(sheet, 3, heads, right=range(1, len(heads)))
    sheet.row_dimensions[3].height = 30
    for row, point in enumerate(curve.points, FIRST):
        font = BOLD if point.chosen else None
        figure(sheet, row, 1, point.weight, WHOLE_SHARE, font=font)
        for column, value in enumerate((point.spend, point.mean, point.bad_years), 2):
            figure(sheet, row, column, value, money, font=font)
        formula(sheet, row, 5, f"C${FIRST}-C{row}", money, font=font)
        formula(sheet, row, 6, f"D{row}-D${FIRST}", money, font=font)
        text(sheet, row, 7, "this order" if point.chosen else "", font=font, align=BESIDE)
        rule(sheet, row, len(heads))
    last = FIRST + len(curve.points) - 1
    _chart(sheet, last, worst)
    row = last + 22
    for sentence in curve.sentences:
        sheet.merge_cells(start_row=row, start_column=1, end_row=row, end_column=len(heads))
        text(sheet, row, 1, sentence, wrap=True, font=QUIET)
        sheet.row_dimensions[row].height = 14 * lines_of(sentence, sum(WIDTHS)) + 3
        row += 1
    widths(sheet, *WIDTHS)
    sheet.freeze_panes = "A4"
    prints(sheet, wide=False, paper=paper, repeat=2, last_column=len(heads), last_row=row - 1)


def _chart(sheet, last, worst):
    chart = ScatterChart()
    chart.title, chart.style, chart.legend = "Mean season against bad years", 13, None
    chart.x_axis.title, chart.y_axis.title = worst, "Mean season"
    chart.x_axis.delete = chart.y_axis.delete = False
    across = Reference(sheet, min_col=4, min_row=FIRST, max_row=last)
    up = Reference(sheet, min_col=3, min_row=FIRST, max_row=last)
    series = Series(up, across, title="orders")
    series.marker.symbol, series.smooth = "circle", False  # nothing is known between two points
    series.graphicalProperties.line.solidFill = series.marker.graphicalProperties.solidFill = INK
    chart.series.append(series)
    chart.height, chart.width = 9, 18
    sheet.add_chart(chart, f"A{last + 2}")
