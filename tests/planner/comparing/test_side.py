"""Runs side by side: each line against the first run."""

from decimal import Decimal

from hypothesis import given
from hypothesis import strategies as st

from planner.comparing import Told, side_by_side
from tests.planner import made
from tests.planner.comparing.reports import reports


@given(found=st.lists(reports(), min_size=2, max_size=4))
def test_each_column_adds_up_to_its_spend(found):
    page = side_by_side([Told(name=f"run {n}", report=report) for n, report in enumerate(found)])
    for number, report in enumerate(found):
        cells = [row.cells[number] for row in (*page.lines, *page.fees)]
        assert sum((cell.cost for cell in cells), Decimal(0)) == report.spend == page.spend.cells[number].cost
        assert sum((cell.more for cell in cells), Decimal(0)) == report.spend - found[0].spend


def test_the_same_order_twice_has_no_line_that_differs():
    report = made.make_report()
    page = side_by_side(
        [Told(name="run 1", report=report), Told(name="run 2", report=report, supposed="dearer")]
    )
    assert page.differing == () and page.lines
    assert [column.supposed for column in page.columns] == ["", "dearer"]
    assert page.columns[0].short_seasons == max(short.in_100 for short in report.shortages)
