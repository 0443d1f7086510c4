"""The whole workbook with every sheet, proven: each formula worked out twice, exactly and by LibreOffice, to the cent.

Reports are drawn at random too: their sums are the Decimal sums of their lines.
"""

import io
import shutil
import subprocess
from dataclasses import replace
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from openpyxl import load_workbook

from planner.workbook import workbook_of
from tests.conftest import need
from tests.inventory.printed.worked_out import Workings, all_formulas
from tests.planner import made
from tests.planner.after import made as after_made
from tests.planner.beliefs.samples import make_section
from tests.planner.workbook.opened import convert, labelled, recalculated

SHEETS = ["Summary", "Order", "Why", "Requirement", "Hauling", "Assembly", "Feed", "Money", "Trial"]
SHEETS += ["Bad years", "Beliefs", "Assumptions"]


def whole_report(**fields):
    return replace(made.make_report(**fields), after=after_made.section(), beliefs=make_section())


def opened(report, **told):
    return load_workbook(io.BytesIO(workbook_of(report, **told)))


def worked_out(book):
    """{(sheet, cell): value} of every formula, exactly."""
    workings = Workings(book)
    return {where: workings.value(*where) for where in all_formulas(book)}


def test_every_sheet_stands_in_its_place():
    assert opened(whole_report()).sheetnames == SHEETS


def test_the_sums_are_the_plans_to_the_cent():
    report = whole_report()
    book = opened(report)
    workings = Workings(book)
    for row in book["Summary"].iter_rows():
        if row[0].value == "Order in all":
            assert workings.value("Summary", row[1].coordinate) == report.spend
    totals = {row[1].value: row[6].coordinate for row in book["Order"].iter_rows() if row[1].value}
    assert workings.value("Order", totals["All orders, shipping included"]) == report.spend


@pytest.mark.office
def test_a_spreadsheet_works_every_formula_out_as_we_do_without_an_error(office, tmp_path):
    data = workbook_of(whole_report())
    exact = worked_out(load_workbook(io.BytesIO(data)))
    book = recalculated(office, data, tmp_path)
    assert len(exact) > 30
    for (sheet, cell), value in exact.items():
        assert round(Decimal(str(book[sheet][cell].value)), 2) == round(value, 2), (sheet, cell)
    cells = [cell for sheet in book for row in sheet.iter_rows() for cell in row]
    assert not [cell for cell in cells if cell.data_type == "e" or str(cell.value).startswith(("#", "Err:"))]


@pytest.mark.office
@pytest.mark.parametrize("size", ["A4", "Letter"])
def test_every_sheet_prints_its_heads_and_feet_on_either_paper(office, tmp_path, size):
    need(shutil.which("pdftotext"), "pdftotext")
    pdf = convert(office, workbook_of(whole_report(), paper=size), tmp_path, "pdf")
    told = subprocess.run(["pdftotext", "-layout", str(pdf), "-"], check=True, capture_output=True, text=True)
    pages = told.stdout.split("\f")[:-1]
    assert f"Page {len(pages)} of {len(pages)}" in " ".join(pages[-1].split())
    for name in SHEETS:
        if name != "Requirement":  # nothing is asked for in this report: nothing to print but its title
            assert any(name in page.splitlines()[-1] or name in page[-200:] for page in pages), name
    assert all(len(page.split()) > 12 for page in pages), "a page with nothing on it but its feet"


money = st.integers(1, 500_000).map(lambda cents: f"{cents // 100}.{cents % 100:02d}")
supplies = st.lists(
    st.tuples(st.lists(st.tuples(st.integers(1, 400), money), min_size=1, max_size=9), money),
    min_size=1,
    max_size=4,
)


@given(supplies)
@settings(max_examples=25, deadline=None)
def test_the_sums_of_any_order_are_those_of_its_lines(drawn):
    orders = []
    for at, (rows, fee) in enumerate(drawn):
        lines = [
            made.make_line(at * 10 + n, f"offer-{n}", "=1+1", "excluder-10", packs, 1, price)
            for n, (packs, price) in enumerate(rows, 1)
        ]
        orders.append(made.make_order(f"s{at}", "N" * 40, lines, fee))
    spend = sum(order.total for order in orders)
    book = opened(made.make_report(orders=tuple(orders), spend=spend))
    sheet, workings = book["Order"], Workings(book)
    found = [row for row in sheet.iter_rows() if row[1].value in ("Goods", "Sum")]
    sums = [workings.value("Order", row[6].coordinate) for row in found]
    assert sums == [value for order in orders for value in (order.goods, order.total)]
    whole = labelled(sheet, "All orders, shipping included", 7)
    assert workings.work_out("Order", whole[1:]) == spend
    told = labelled(book["Summary"], "Order in all", 2)
    assert workings.work_out("Summary", told[1:]) == spend
