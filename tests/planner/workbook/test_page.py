"""What the sheets share: heads in their row, sentences over the whole width, a chart with a row below it, the print set-up."""

from openpyxl import Workbook

from planner.workbook.page import HEADS_ROW, curve, ends, opens, said


def sheet():
    return Workbook().active


def test_a_sheet_opens_with_its_name_and_the_heads_of_its_table():
    made = sheet()
    assert opens(made, "Feed", "how to read it", ("Week of", "Gallons"), right=(2,), tall=30) == HEADS_ROW + 1
    assert (made["A1"].value, made["A2"].value) == ("Feed", "how to read it")
    assert [(cell.value, cell.alignment.horizontal) for cell in made[HEADS_ROW]] == [
        ("Week of", "left"),
        ("Gallons", "right"),
    ]
    assert made.row_dimensions[HEADS_ROW].height == 30


def test_a_sentence_takes_the_whole_width_and_the_height_it_needs():
    made = sheet()
    assert said(made, 5, "short", (20, 20)) == 6
    assert said(made, 6, "long " * 40, (20, 20)) == 7
    assert {str(each) for each in made.merged_cells.ranges} == {"A5:B5", "A6:B6"}
    assert made.row_dimensions[6].height >= 4 * 14 > made.row_dimensions[5].height


def test_a_sentence_that_looks_like_a_formula_stays_text():
    made = sheet()
    said(made, 5, "=1+1", (20,))
    assert (made["A5"].value, made["A5"].data_type) == ("=1+1", "s")


def test_a_curve_reads_its_rows_and_gives_the_row_below_it():
    made = sheet()
    below = curve(made, "Earned", (1, "Budget"), (3, "Season"), first=4, last=9, name="orders")
    (chart,) = made._charts
    (series,) = chart.series
    assert (series.xVal.numRef.f, series.yVal.numRef.f) == ("'Sheet'!$A$4:$A$9", "'Sheet'!$C$4:$C$9")
    assert chart.anchor == "A11"
    assert (below - 11) * 12.75 >= 9 / 2.54 * 72 - 1  # points: rows of plain text, the chart's 9 cm


def test_a_sheet_prints_its_columns_to_its_last_row_with_its_heads_on_every_page():
    made = sheet()
    ends(made, (10, 20), last_row=7, paper="A4", wide=True, frozen="B4")
    assert [made.column_dimensions[letter].width for letter in "AB"] == [10, 20]
    assert (made.freeze_panes, made.print_title_rows) == ("B4", f"$1:${HEADS_ROW}")
    assert made.print_area.endswith("$A$1:$B$7") and made.page_setup.orientation == "landscape"
