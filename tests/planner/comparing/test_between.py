"""What changed between two runs: nothing of itself, else lines and causes."""

from dataclasses import replace
from decimal import Decimal

from hypothesis import given

from planner.comparing import Told, between
from tests.planner import made
from tests.planner.comparing.reports import reports


@given(report=reports())
def test_a_run_compared_with_itself_gives_nothing(report):
    told = Told(name="run 3", report=report)
    changes = between(told, told)
    assert (changes.is_change, changes.more, changes.lines, changes.causes) == (False, 0, (), ())


def test_the_spend_the_lines_and_the_causes_are_told_together():
    report = made.make_report()
    dearer = replace(report, spend=report.spend + Decimal("1.50"), budget=Decimal("5000"))
    changes = between(Told(name="run 3", report=report), Told(name="run 4", report=dearer))
    assert (changes.since, changes.more) == ("run 3", Decimal("1.50"))
    assert changes.is_change and "The budget is $5,000.00" in changes.causes[-1]
