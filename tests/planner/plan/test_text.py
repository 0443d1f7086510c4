"""The printed table: 100 columns, the sums, the gap, the gain."""

from dataclasses import replace
from decimal import Decimal

from planner.plan import report_of
from planner.plan.records import Rival
from planner.plan.terminal import WIDTH
from planner.plan.text import as_text
from tests.planner import made
from tests.planner.after import made as after_made
from tests.planner.plan import small

RIVAL = Rival(
    name="a rule of thumb",
    how="a super a colony",
    spend=Decimal("180.00"),
    worth=Decimal("150.00"),
    gain=Decimal("50.00"),
    bad_year=Decimal("10.00"),
    packs={"north-box": 1},
)


def text(**others):
    made = report_of(small.operation(), small.assumptions(), small.problem(), small.plan(), rivals=(RIVAL,))
    return as_text(made, **others)


def test_no_line_is_wider_than_a_terminal():
    assert max(len(line) for line in text(why=True).splitlines()) <= WIDTH == 100


def test_it_tells_lines_sums_gap_and_gain():
    said = text()
    assert "Medium box, in pieces, pack of 5" in said
    assert "145.00" in said and "All orders, shipping included" in said and "200.00" in said
    assert "Left" in said and "50.00" in said
    assert "Proven to 0.05" in said
    assert "Worth $50 a season more than a rule of thumb (a super a colony)." in said
    assert "Judged on the same 4 seasons it was planned with" in said


def test_reasons_stand_under_their_lines_where_they_are_asked_for():
    assert "Without this line" not in text()
    assert "Without this line" in text(why=True)


def test_cautions_are_printed_with_the_word():
    said = text()
    for head in (
        "Caution: lifting",
        "Caution: loads",
        "Caution: held-back gear",
        "Caution: stings and smoke",
    ):
        assert head in said


def test_what_follows_the_order_is_told_in_two_lines():
    report = replace(made.make_report(), after=after_made.section())
    assert "3 loads to haul, 1 of them extra trips" in as_text(report)
    assert "loads to haul" not in as_text(made.make_report())
