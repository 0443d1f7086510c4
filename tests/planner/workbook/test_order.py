"""The sheet Order: blocks, kits, steps, sums."""

from openpyxl import Workbook

from planner.plan import report_of
from planner.workbook.order import write_order
from tests.planner.plan import small


def written(problem=None, plan=None):
    sheet = Workbook().active
    made = report_of(small.operation(), small.assumptions(), problem or small.problem(), plan or small.plan())
    return sheet, write_order(sheet, made, "A4")


def row(sheet, number):
    return [cell.value for cell in sheet[number]]


def test_a_block_has_its_lines_its_goods_its_shipping_and_its_sum():
    sheet, sums = written()
    assert row(sheet, 4)[0] == "North Woodware (invented)"
    assert row(sheet, 5)[:7] == [1, "Medium box, in pieces, pack of 5", 2, 10, "piece", 72.5, "=C5*F5"]
    assert [sheet[f"G{at}"].value for at in (7, 8, 9)] == ["=SUM(G5:G6)", 24, "=G7+G8"]
    assert (sums.goods, sums.fees, sums.totals) == (("G7",), ("G8",), ("G9",))
    assert sheet[sums.grand].value == "=G9"


def test_a_kit_lists_what_is_in_it_without_a_price():
    data = small.problem_data()
    data["offers"][0]["parts"] = {small.FLAT: 5, "guard-10": 5}
    sheet, sums = written(small.problem(offers=data["offers"]))
    assert row(sheet, 5)[2:4] == [2, None] and row(sheet, 5)[6] == "=C5*F5"
    assert row(sheet, 6)[1:7] == [
        "    of it: medium box, 10 frames, in pieces",
        None,
        10,
        "piece",
        None,
        None,
    ]
    assert row(sheet, 7)[1].strip() == "of it: mouse guard, 10 frames"
    assert sheet[sums.goods[0]].value == "=SUM(G5:G8)"


def test_steps_that_price_their_own_packs_are_spelt_out_in_the_formula():
    data = small.problem_data()
    data["offers"][0]["price_rule"] = "incremental"
    line = {"offer": "north-box", "period": 0, "packs": 3, "units": {}, "cost": 225.0}
    plan = small.plan(here_and_now=[line], fees=[], spend=225.0)
    sheet, _ = written(small.problem(offers=data["offers"]), plan)
    assert row(sheet, 5)[5:7] == ["=G5/C5", "=1*80.00+2*72.50"]


def test_an_order_of_nothing_sums_to_nothing():
    sheet, sums = written(plan=small.plan(here_and_now=[], fees=[], spend=0))
    assert sums.totals == () and sheet[sums.grand].value == "=0"


def test_heads_are_frozen():
    assert written()[0].freeze_panes == "C4"
