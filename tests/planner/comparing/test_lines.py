"""Lines that differ, and that they add up to the spend."""

from decimal import Decimal

from hypothesis import given

from planner.comparing.lines import line_changes
from tests.planner.comparing.reports import reports


@given(before=reports(), now=reports())
def test_differences_of_lines_and_fees_add_up_to_that_of_the_spend_to_the_cent(before, now):
    changes = line_changes(before, now)
    assert sum((change.more for change in changes), Decimal(0)) == now.spend - before.spend
    assert all(change.is_change for change in changes)


@given(report=reports())
def test_an_order_beside_itself_differs_in_nothing(report):
    assert line_changes(report, report) == ()


@given(before=reports(), now=reports())
def test_what_is_more_one_way_is_less_the_other(before, now):
    there, back = (
        {change.code: (change.more, change.more_packs) for change in line_changes(*pair)}
        for pair in ((before, now), (now, before))
    )
    assert there == {code: (-more, -packs) for code, (more, packs) in back.items()}
