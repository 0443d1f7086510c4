"""The report's records: frozen, and a reason is one text."""

from dataclasses import FrozenInstanceError

import pytest

from planner.plan import report_of
from tests.planner.plan import small


def report():
    return report_of(small.operation(), small.assumptions(), small.problem(), small.plan())


def test_a_report_cannot_be_changed_after_it_is_made():
    with pytest.raises(FrozenInstanceError):
        report().spend = 0


def test_a_reason_reads_as_one_text_beliefs_last():
    why = report().lines[0].why
    assert why.text.startswith(why.sentences[0]) and why.text.endswith(why.beliefs[-1])


def test_lines_of_all_suppliers_are_one_list():
    assert [line.number for line in report().lines] == [1, 2]
