"""The whole workbook: its sheets, its sums as LibreOffice works them out, its pages, and text that stays text."""

import datetime as dt
import shutil
import subprocess
from dataclasses import replace
from decimal import Decimal

import pytest

from planner.plan import report_of
from planner.workbook import workbook_of
from tests.conftest import need
from tests.planner.plan import small
from tests.planner.workbook.opened import convert, labelled, recalculated, written

NASTY = ("=1+1", "+CMD|' /C calc'!A0", "@SUM(A1)", "-2+3", "a\x00b\x07c\rd", "שלום מכוורת", "N" * 40)


def report(operation=None, **changed):
    return report_of(
        operation or small.operation(), small.assumptions(), small.problem(**changed), small.plan()
    )


def stepped():
    """Prices that each price their own packs only: 5 at 80, the rest at 72.50."""
    data = small.problem_data()
    data["offers"][0] |= {
        "price_rule": "incremental",
        "prices": [{"from_packs": 1, "price": 80.35}, {"from_packs": 3, "price": 72.55}],
    }
    line = {"offer": "north-box", "period": 0, "packs": 7, "units": {small.FLAT: 35}, "cost": 523.45}
    plan = small.plan(here_and_now=[line], fees=[], spend=523.45)
    problem = small.problem(offers=data["offers"], budget=None)
    return report_of(small.operation(), small.assumptions(), problem, plan)


def test_it_has_its_five_sheets_in_order():
    book = written(workbook_of(report()))
    assert book.sheetnames == ["Summary", "Order", "Why", "Requirement", "Assumptions"]


def test_every_sum_is_a_formula():
    book = written(workbook_of(report()))
    order = book["Order"]
    for words in ("Goods", "Sum", "All orders, shipping included"):
        assert str(labelled(order, words, 7)).startswith("="), words
    for line in (5, 6):
        assert order.cell(line, 7).value == f"=C{line}*F{line}"
    for words in ("Goods", "Shipping", "Order in all", "Left of it"):
        assert str(labelled(book["Summary"], words, 2)).startswith("="), words


@pytest.mark.office
def test_a_spreadsheet_works_out_the_plans_sums_to_the_cent_without_an_error(office, tmp_path):
    made = report()
    book = recalculated(office, workbook_of(made), tmp_path)
    summary, order = book["Summary"], book["Order"]
    assert money(labelled(summary, "Order in all", 2)) == made.spend
    assert money(labelled(summary, "Goods", 2)) == made.orders[0].goods
    assert money(labelled(summary, "Shipping", 2)) == made.orders[0].fee
    assert money(labelled(summary, "Left of it", 2)) == Decimal("50.00")
    assert money(labelled(order, "All orders, shipping included", 7)) == made.spend
    assert [money(order.cell(row, 7).value) for row in (5, 6)] == [line.cost for line in made.lines]
    requirement = book["Requirement"]
    week_26 = next(row for row in requirement.iter_rows(min_row=4, values_only=True) if row[1] == 26)
    assert week_26[:1] + week_26[3:4] == ("All yards, mean", 14)
    assert errors(book) == []


@pytest.mark.office
def test_step_prices_come_out_to_the_cent(office, tmp_path):
    made = stepped()
    book = recalculated(office, workbook_of(made), tmp_path)
    assert made.spend == Decimal("523.45")  # 2 at 80.35 and 5 at 72.55
    assert money(labelled(book["Order"], "All orders, shipping included", 7)) == made.spend
    assert errors(book) == []


def money(value):
    return Decimal(str(round(value, 6))).quantize(Decimal("0.000001")).normalize().quantize(Decimal("0.01"))


def errors(book):
    return [
        f"{sheet.title}!{cell.coordinate} {cell.value}"
        for sheet in book
        for row in sheet.iter_rows()
        for cell in row
        if cell.data_type == "e" or (isinstance(cell.value, str) and cell.value.startswith(("#", "Err:")))
    ]


@pytest.mark.office
def test_it_prints_on_whole_pages_with_nothing_cut_off(office, tmp_path):
    """Each sheet fits the width of its paper: no page without text, no text outside the paper."""
    need(shutil.which("pdftotext"), "pdftotext")
    pdf = convert(office, workbook_of(report()), tmp_path, "pdf")
    text = subprocess.run(
        ["pdftotext", "-layout", str(pdf), "-"], check=True, capture_output=True, text=True
    ).stdout
    pages = text.split("\f")[:-1]
    assert all(page.strip() for page in pages)
    said = " ".join(text.split())
    for words in ("Winter order", "Why each line", "Gear asked for by week", "Assumptions"):
        assert words in said
    assert "price from 2 packs on" in said
    assert f"Page 1 of {len(pages)}" in said


def nasty_operation(text):
    """A keeper whose offers, supplier and parts are called so."""
    whole = small.operation()
    return replace(
        whole,
        offers=tuple(replace(offer, name=text) for offer in whole.offers),
        suppliers=(replace(whole.suppliers[0], name=text),),
        parts=tuple(replace(part, name=text) for part in whole.parts),
        yards=tuple(replace(yard, name=f"{text}{yard.code}") for yard in whole.yards),
    )


@pytest.mark.parametrize("text", NASTY)
def test_what_people_type_never_becomes_a_formula(text):
    book = written(workbook_of(report(nasty_operation(text))))
    clean = "".join(sign for sign in text if sign.isprintable())
    order = book["Order"]
    assert order.cell(4, 1).value == clean and order.cell(4, 1).data_type == "s"
    assert order.cell(5, 2).value == clean and order.cell(5, 2).data_type == "s"
    ours = ("=SUM(", "=SUMIF(", "=Order!", "=C", "=G", "=B")
    live = [
        cell.value for sheet in book for row in sheet.iter_rows() for cell in row if cell.data_type == "f"
    ]
    assert live and all(value.startswith(ours) for value in live)


@pytest.mark.office
def test_what_people_type_survives_the_spreadsheet_as_text(office, tmp_path):
    book = recalculated(office, workbook_of(report(nasty_operation("=1+1"))), tmp_path)
    assert book["Order"].cell(5, 2).value == "=1+1"
    assert errors(book) == []


def test_it_names_no_person_and_says_the_day_of_the_order():
    properties = written(workbook_of(report())).properties
    assert not properties.creator and not properties.lastModifiedBy
    assert properties.created.date() == small.DAY


def test_paper_follows_the_money_or_what_is_asked():
    assert {sheet.page_setup.paperSize for sheet in written(workbook_of(report()))} == {1}
    assert {sheet.page_setup.paperSize for sheet in written(workbook_of(report(), paper="A4"))} == {9}
    euro = report(small.operation(money="EUR"))
    assert {sheet.page_setup.paperSize for sheet in written(workbook_of(euro))} == {9}


def test_a_report_without_an_order_is_a_workbook_all_the_same():
    plan = small.plan(
        status="infeasible",
        reason="feed",
        objective=None,
        bound=None,
        gap=None,
        here_and_now=[],
        fees=[],
        spend=None,
        scenarios=[],
    )
    made = report_of(small.operation(), small.assumptions(), small.problem(), plan)
    book = written(workbook_of(made))
    assert "No order can do what must be done" in book["Summary"].cell(3, 1).value
    assert labelled(book["Order"], "All orders, shipping included", 7) == "=0"


def test_days_are_days_and_money_is_money():
    book = written(workbook_of(report()))
    order = book["Order"]
    assert order.cell(5, 8).value.date() == dt.date(2027, 1, 31) and order.cell(5, 8).is_date
    assert order.cell(5, 6).number_format.startswith("[$$-409]#,##0.00")
