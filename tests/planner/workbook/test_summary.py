"""The sheet Summary: what a keeper reads first."""

from dataclasses import replace
from decimal import Decimal

from openpyxl import Workbook

from planner.plan import report_of
from planner.plan.records import NoOffer, Rival, Shortage
from planner.workbook.order import Sums
from planner.workbook.summary import write_summary
from tests.planner.plan import small
from tests.planner.workbook.opened import labelled

SUMS = Sums(goods=("G7",), fees=("G8",), totals=("G9",), grand="G11")


def report():
    return report_of(small.operation(), small.assumptions(), small.problem(), small.plan())


def written(made):
    sheet = Workbook().active
    write_summary(sheet, made, SUMS, "A4")
    return sheet


def texts(sheet):
    return [cell.value for row in sheet.iter_rows() for cell in row if isinstance(cell.value, str)]


def test_the_headline_comes_first_and_sums_look_up_the_order():
    sheet = written(report())
    assert sheet["A3"].value.startswith("2 lines from North Woodware (invented)")
    assert labelled(sheet, "Order in all", 2) == "=Order!G11"
    assert labelled(sheet, "Goods", 2) == "=Order!G7"
    assert labelled(sheet, "North Woodware (invented)", 5) == "=Order!G9"


def test_a_part_nobody_sells_is_told_before_the_money():
    missing = NoOffer(part="x", name="x", missing=3, by=small.DAY, text="No offer for covers.")
    sheet = written(replace(report(), no_offers=(missing,)))
    said = texts(sheet)
    assert said.index("No offer for covers.") < said.index("Money")


def test_rivals_stand_beside_the_order_with_the_gain():
    rival = Rival(
        name="a rule of thumb",
        how="h",
        spend=Decimal(180),
        worth=Decimal(150),
        gain=Decimal(50),
        bad_year=Decimal(10),
        packs={},
    )
    made = report_of(small.operation(), small.assumptions(), small.problem(), small.plan(), rivals=[rival])
    sheet = written(made)
    assert [labelled(sheet, "A rule of thumb", column) for column in (2, 3, 4, 5)] == [180, 150, 10, 50]


def test_what_is_left_out_is_summed_by_a_formula():
    rows = tuple(
        Shortage(what=what, wanted=9.0, left_out=3.0, lost=Decimal(lost), in_100=40, yards=("Creek",))
        for what, lost in (("supers", 90), ("hives", 30))
    )
    sheet = written(replace(report(), shortages=rows))
    assert labelled(sheet, "supers at Creek", 5) == 90
    assert str(labelled(sheet, "Sum", 5)).startswith("=SUM(E")


def test_a_row_is_as_tall_as_its_words_need():
    what = "second supers in the long flow of the limes"
    row = Shortage(what=what, wanted=9.0, left_out=3.0, lost=Decimal(9), in_100=40, yards=("Creek", "Hill"))
    sheet = written(replace(report(), shortages=(row,)))
    (at,) = [cells[0].row for cells in sheet.iter_rows() if str(cells[0].value).startswith(what)]
    assert sheet.row_dimensions[at].height > 28


def test_without_a_budget_nothing_is_left_of_one():
    sheet = written(replace(report(), budget=None))
    assert "Budget" not in texts(sheet) and "Left of it" not in texts(sheet)


def test_every_caution_is_there_with_the_word():
    said = texts(written(report()))
    for caution in report().cautions:
        assert f"{caution.head}. {caution.text}" in said
