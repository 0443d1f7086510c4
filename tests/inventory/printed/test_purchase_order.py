"""The purchase order as a workbook: who, to whom, lines, prices asked for, sums as formulas, pages, hostile text."""

import datetime as dt
import io
import shutil
import subprocess
from decimal import Decimal

import pytest
from hypothesis import given, settings
from openpyxl import load_workbook

from inventory.printed import AskedLine, Party, purchase_order
from tests.conftest import need
from tests.inventory.printed import made
from tests.inventory.printed.worked_out import Workings, all_formulas
from tests.planner.workbook.opened import convert, recalculated

NASTY = (
    "=1+1",
    "+CMD|' /C calc'!A0",
    "@SUM(A1)",
    "-2+3",
    "\t=1+1",
    '=HYPERLINK("x","y")',
    "a\x00b\x07c\x9bd",
    "שלום, מכוורת הצפון",
    "\u202egnp.exe",
    "N" * 40,
    "A & B &P",
    "<b>&amp;'\"",
)


def opened(order, **told):
    return load_workbook(io.BytesIO(purchase_order(order, **told)))


def words(sheet):
    return [cell.value for row in sheet.iter_rows() for cell in row if isinstance(cell.value, str)]


def row_of(sheet, said):
    return next(row for row in sheet.iter_rows() if said in (row[0].value, row[1].value))


def total_of(book):
    sheet = book["Purchase order"]
    cell = next(row[6] for row in sheet.iter_rows() if str(row[1].value).startswith("Total"))
    return Workings(book).value(sheet.title, cell.coordinate)


def test_it_says_who_orders_from_whom_by_which_number_and_by_when():
    sheet = opened(made.make_paper()).active
    told = words(sheet)
    for said in (
        "Invented Apiary",
        "1 Example Lane",
        "Nowhere 00000",
        "555 0100",
        "North Woodware (invented)",
        "K-4711",
    ):
        assert said in told
    assert "winter-order-7-north-0" in told
    days = [
        cell.value.date() for row in sheet.iter_rows() for cell in row if isinstance(cell.value, dt.datetime)
    ]
    assert days == [made.DAY, made.make_paper().wanted_by]


def test_a_line_has_the_suppliers_words_packs_units_price_and_its_sum_as_a_formula():
    sheet = opened(made.make_paper()).active
    row = row_of(sheet, "Medium box, in pieces, pack of 5")
    assert [cell.value for cell in row[:6]] == [1, "Medium box, in pieces, pack of 5", 2, 10, "piece", 72.5]
    assert row[6].value == f"=C{row[0].row}*F{row[0].row}"


def test_sums_are_formulas_and_come_to_the_total():
    paper = made.make_paper(made.make_line(), made.kit(), made.stepped(), made.lump())
    book = opened(paper)
    for said in ("Goods", "Total"):
        assert str(row_of(book.active, said)[6].value).startswith("=")
    assert total_of(book) == paper.total == Decimal("1482.45")  # 145 + 690 + 523.45 + 100 + 24


def test_a_kit_lists_what_is_in_it_with_units_and_without_a_price():
    sheet = opened(made.make_paper(made.kit())).active
    row = row_of(sheet, "    of it: wire")
    assert [cell.value for cell in row[2:7]] == [None, 20, "ft", None, None]


def test_a_line_without_a_price_asks_for_it_and_counts_once_one_is_typed_in():
    paper = made.make_paper(made.make_line(), made.asked())
    book = opened(paper)
    row = row_of(book.active, "Branding iron")
    assert row[5].value == "please quote"
    assert total_of(book) == paper.total == Decimal("169.00")
    row[5].value = 12.25
    assert total_of(book) == Decimal("181.25")
    assert any(said.startswith("Please quote the lines") for said in words(book.active))


def test_an_order_with_all_prices_asks_for_none():
    assert not any("quote" in said for said in words(opened(made.make_paper()).active))


def test_the_keepers_note_stands_under_the_total_line_by_line():
    told = words(opened(made.make_paper(note="Ring first.\n\nNo forklift here.")).active)
    total = told.index("Total")
    assert told[total + 2 : total + 4] == ["Ring first.", "No forklift here."]


def test_a_bill_that_is_not_the_cost_is_a_bug():
    with pytest.raises(ValueError, match="is not 2 packs at 10"):
        AskedLine(name="Box", packs=2, contents=(), cost=Decimal(10), bill=((2, Decimal(4)),))


def test_paper_follows_the_money_or_what_is_asked_and_heads_are_repeated():
    assert opened(made.make_paper()).active.page_setup.paperSize == 1
    assert opened(made.make_paper(money="EUR")).active.page_setup.paperSize == 9
    sheet = opened(made.make_paper(), paper="A4").active
    assert sheet.page_setup.paperSize == 9
    head = row_of(sheet, "Article")[0].row
    assert sheet.print_title_rows == f"${head}:${head}"
    assert (sheet.page_setup.fitToWidth, sheet.page_setup.fitToHeight) == (1, 0)


def nasty(text):
    party = Party(name=text, address=f"{text}\n{text}", phone=text, email=text)
    return made.make_paper(
        made.make_line(text), sender=party, supplier=party, reference=text, customer_number=text, note=text
    )


@pytest.mark.parametrize("text", NASTY)
def test_what_people_type_never_becomes_a_formula(text):
    book = opened(nasty(text))
    live = [book[sheet][cell].value for sheet, cell in all_formulas(book)]
    assert len(live) == 3 and all(value.startswith(("=C", "=SUM(G", "=G")) for value in live)
    assert total_of(book) == Decimal("169.00")
    assert not any(sign in said for said in words(book.active) for sign in "\x00\x07\x9b\u202e")


@given(made.papers)
@settings(max_examples=40, deadline=None)
def test_the_total_of_any_order_is_its_sum_to_the_cent(paper):
    assert total_of(opened(paper)) == paper.total


def test_ten_thousand_lines_are_one_sum():
    paper = made.make_paper(*[made.make_line(f"Piece {n}", 1, "0.01") for n in range(10_000)])
    book = opened(paper)
    assert str(row_of(book.active, "Goods")[6].value).endswith("G10014)")
    assert total_of(book) == Decimal("124.00")


@pytest.mark.office
def test_a_spreadsheet_comes_to_the_same_total_and_finds_no_error(office, tmp_path):
    lines = (made.make_line(), made.kit(), made.stepped(), made.lump(), made.asked(), made.make_line("=1+1"))
    paper = made.make_paper(*lines, note="-2+3\nA & B")
    book = recalculated(office, purchase_order(paper), tmp_path)
    cells = [cell for row in book.active.iter_rows() for cell in row]
    total = next(row[6].value for row in book.active.iter_rows() if str(row[1].value).startswith("Total"))
    assert round(Decimal(str(total)), 2) == paper.total
    assert not [
        cell.coordinate
        for cell in cells
        if cell.data_type == "e" or str(cell.value).startswith(("#", "Err:"))
    ]
    assert "=1+1" in words(book.active) and "-2+3" in words(book.active)


@pytest.mark.office
@pytest.mark.parametrize("size", ["A4", "Letter"])
def test_a_long_order_prints_one_page_wide_with_its_heads_on_each(office, tmp_path, size):
    need(shutil.which("pdftotext"), "pdftotext")
    lines = [made.make_line(f"Piece {n} of a long order", n, "12.35") for n in range(1, 121)]
    paper = made.make_paper(*lines, reference="A & B 7")
    pdf = convert(office, purchase_order(paper, paper=size), tmp_path, "pdf")
    pages = said_on(pdf)
    assert len(pages) == 3
    assert all("Price a pack" in page and "A & B 7, Invented Apiary" in page for page in pages)
    assert "Piece 120 of a long order" in "".join(pages) and "Page 3 of 3" in pages[-1]
    assert f"{paper.total:,.2f}" in pages[-1]


def said_on(pdf):
    found = subprocess.run(
        ["pdftotext", "-layout", str(pdf), "-"], check=True, capture_output=True, text=True
    )
    return found.stdout.split("\f")[:-1]
