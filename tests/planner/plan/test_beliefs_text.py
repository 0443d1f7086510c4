"""The belief check in a terminal: what to find out, nothing where it was not checked."""

from dataclasses import replace

from planner.plan.beliefs_text import belief_lines
from planner.plan.terminal import WIDTH
from planner.plan.text import as_text
from tests.planner import made
from tests.planner.beliefs.samples import make_section


def test_each_answer_to_find_out_is_told_with_its_dearer_end():
    report = replace(made.make_report(), beliefs=make_section())
    lines = belief_lines(report)
    assert "Find out: colonies that come through the winter (72 %). If only 55 % come through" in lines
    assert "Find out: price of a pound of honey ($2.60)." in lines
    assert all(len(line) <= WIDTH for line in lines.splitlines())
    assert lines in as_text(report)


def test_an_order_not_checked_says_nothing_of_it():
    assert belief_lines(made.make_report()) == ""
