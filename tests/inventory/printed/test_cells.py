"""Cells: text that stays text, formulas of our own making only, money in the keeper's money, sheets that print."""

import pytest
from openpyxl import Workbook

from inventory.printed.cells import (
    clean,
    figure,
    formula,
    lines_of,
    money_format,
    prints,
    text,
)


@pytest.fixture
def sheet():
    return Workbook().active


@pytest.mark.parametrize("value", ["=1+1", "+1", "-1", "@x"])
def test_text_that_looks_like_a_formula_is_text_and_stays_so_when_edited(sheet, value):
    cell = text(sheet, 1, 1, value)
    assert (cell.value, cell.data_type, bool(cell.quotePrefix)) == (value, "s", True)


def test_plain_text_is_not_quoted(sheet):
    assert not text(sheet, 1, 1, "Creek").quotePrefix


def test_control_characters_and_half_signs_go_and_lines_stay():
    assert clean("a\x00\x07\x0b\x1f\r\ud800b\nc\td") == "ab\nc\td"


def test_a_novel_is_cut_to_what_a_cell_holds():
    assert len(clean("x" * 50_000)) == 32_000


def test_a_formula_with_anything_foreign_in_it_is_a_bug(sheet):
    formula(sheet, 1, 1, "SUM(G4:G9)", "0.00")
    with pytest.raises(AssertionError):
        formula(sheet, 1, 2, "CMD|' /C calc'!A0", "0.00")


def test_money_without_a_sign_of_its_own_is_named():
    assert money_format("USD").startswith("[$$-409]")
    assert money_format("SEK").startswith('#,##0.00" SEK"')
    assert money_format('X";Y').startswith('#,##0.00" XY"')


def test_a_figure_left_open_is_an_empty_cell(sheet):
    assert figure(sheet, 1, 1, None, "0").value is None


def test_long_text_takes_more_lines_in_a_narrow_column():
    assert lines_of("", 10) == 1
    assert lines_of("x" * 100, 10) > lines_of("x" * 100, 50) > 1
    assert lines_of("a\nb\nc", 10) == 3


def test_a_sheet_prints_within_the_width_of_its_paper_heads_on_each_page(sheet):
    prints(sheet, wide=True, paper="A4", repeat=3, last_column=9, last_row=40)
    assert sheet.page_setup.orientation == "landscape" and sheet.page_setup.paperSize == 9
    assert (sheet.page_setup.fitToWidth, sheet.page_setup.fitToHeight) == (1, 0)
    assert sheet.print_title_rows == "$1:$3"
    assert sheet.print_area == "'Sheet'!$A$1:$I$40"
