"""A shown table as a workbook, as written and as a spreadsheet opens it."""

import datetime as dt
import io
from decimal import Decimal

import pytest
from openpyxl import load_workbook

from inventory.printed.shown_table import Shown
from inventory.printed.table_book import HEADS, book_of, file_name

DAY = dt.date(2026, 12, 1)
HOSTILE = ("=1+1", "+1", "-1+2", "@SUM(A1)", '=HYPERLINK("x")', "bell\x07", "\u202eright to left", "خلية")


def shown(rows, sums=(), heads=("Piece", "Came", "Worth")):
    columns = tuple((head, place > 1) for place, head in enumerate(heads))
    return Shown(caption="What lies here", columns=columns, rows=tuple(rows), sums=tuple(sums))


def opened(table, name="Gear", words="kind box"):
    return load_workbook(io.BytesIO(book_of(table, name=name, words=words, day=DAY))).active


def test_numbers_days_and_money_keep_their_kind():
    sheet = opened(shown([("Deep", DAY, Decimal("1234.50"))], [("Sum", "", Decimal("1234.50"))]))
    row, total = sheet[HEADS + 1], sheet[HEADS + 2]
    assert (row[0].value, row[1].value.date(), row[2].value) == ("Deep", DAY, 1234.5)
    assert (row[1].number_format, row[2].number_format) == ("d mmm yyyy", "#,##0.00")
    assert total[2].value == 1234.5 and total[2].font.bold


def test_the_head_stays_and_says_what_was_chosen():
    sheet = opened(shown([("Deep", DAY, 1)]))
    assert sheet["A1"].value == "Gear"
    assert sheet["A2"].value == "What lies here. kind box. Of 1 December 2026"
    assert [cell.value for cell in sheet[HEADS]] == ["Piece", "Came", "Worth"]
    assert sheet.freeze_panes == f"A{HEADS + 1}"
    assert sheet.auto_filter.ref == f"A{HEADS}:C{HEADS + 1}"


@pytest.mark.parametrize("words", HOSTILE)
def test_text_from_people_is_never_a_formula(words):
    cell = opened(shown([(words, "", "")]))[HEADS + 1][0]
    assert cell.data_type == "s"
    assert cell.value == words.replace("\x07", "").replace("\u202e", "")


@pytest.mark.parametrize("name", ["A name of far more than thirty-one letters", "[a]:b*c?/\\'d", "''"])
def test_any_name_makes_a_sheet(name):
    sheet = opened(shown([("Deep", "", 1)]), name=name)
    assert 0 < len(sheet.title) <= 31


def test_an_empty_table_makes_a_sheet():
    assert opened(shown([], heads=())).max_row >= 1


def test_ten_thousand_rows_all_stand_there():
    sheet = opened(shown((f"piece {number}", DAY, number) for number in range(10_000)))
    assert sheet.max_row == HEADS + 10_000
    assert sheet.cell(sheet.max_row, 3).value == 9_999


def test_columns_are_as_wide_as_their_words_up_to_a_bound():
    sheet = opened(shown([("x" * 30, DAY, 1), ("y", DAY, 2)]))
    assert sheet.column_dimensions["A"].width == 32
    assert opened(shown([("x" * 900, DAY, 1)])).column_dimensions["A"].width == 60


@pytest.mark.parametrize(
    ("name", "file"),
    [
        ("Gear", "gear-2026-12-01.xlsx"),
        ("../Store of «Hill»\n=1", "store-of-hill-1-2026-12-01.xlsx"),
        ("خلية", "table-2026-12-01.xlsx"),
        ("x" * 300, f"{'x' * 60}-2026-12-01.xlsx"),
    ],
)
def test_a_file_name_is_safe_anywhere(name, file):
    assert file_name(name, DAY) == file
