"""What the sheets of the workbook share: how one opens and ends, a sentence over its width, the chart of a curve.

Takes openpyxl sheets and `across`, the widths of their columns; changes them. Knows no report.
"""

from openpyxl.chart import Reference, ScatterChart, Series

from inventory.printed.cells import INK, QUIET, head_row, lines_of, prints, text, title, widths

HEADS_ROW = 3
CHART_ROWS = 20


def opens(sheet, name, under, heads, *, right=(), beside=(), tall=None):
    """The sheet's name, a quiet line under it, and the heads of its table; gives the table's first row."""
    title(sheet, name, under)
    head_row(sheet, HEADS_ROW, heads, right=right, beside=beside)
    if tall:
        sheet.row_dimensions[HEADS_ROW].height = tall
    return HEADS_ROW + 1


def said(sheet, row, words, across, *, font=QUIET):
    """A sentence over all columns, as tall as it needs; gives the next row."""
    sheet.merge_cells(start_row=row, start_column=1, end_row=row, end_column=len(across))
    text(sheet, row, 1, words, wrap=True, font=font)
    sheet.row_dimensions[row].height = 14 * lines_of(words, sum(across)) + 3
    return row + 1


def curve(sheet, words, across, up, *, first, last, name):
    """A chart under the rows `first` to `last`; `across`, `up`: (column, words) of its axes. Gives the row below it."""
    chart = ScatterChart()
    chart.title, chart.style, chart.legend = words, 13, None
    chart.x_axis.title, chart.y_axis.title = across[1], up[1]
    chart.x_axis.delete = chart.y_axis.delete = False
    columns = [Reference(sheet, min_col=axis[0], min_row=first, max_row=last) for axis in (up, across)]
    series = Series(*columns, title=name)
    series.marker.symbol, series.smooth = "circle", False  # nothing is known between two points
    series.graphicalProperties.line.solidFill = series.marker.graphicalProperties.solidFill = INK
    chart.series.append(series)
    chart.height, chart.width = 9, 18
    sheet.add_chart(chart, f"A{last + 2}")
    return last + 2 + CHART_ROWS


def ends(sheet, across, *, last_row, paper, wide, repeat=HEADS_ROW, frozen="A4"):
    """Column widths, what stays in sight, and how it prints; `repeat`: rows on every page."""
    widths(sheet, *across)
    sheet.freeze_panes = frozen
    prints(sheet, wide=wide, paper=paper, repeat=repeat, last_column=len(across), last_row=last_row)
