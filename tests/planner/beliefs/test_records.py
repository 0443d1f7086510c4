"""The belief check's part of a report: to JSON and back, and what is asked of it."""

import json
from dataclasses import replace
from decimal import Decimal

import pytest

from planner.plan.json_form import NotAReport, as_json, report_from
from tests.planner import made
from tests.planner.beliefs.samples import make_belief, make_end, make_section


def test_the_section_comes_back_as_it_went():
    report = replace(made.make_report(), beliefs=make_section())
    assert report_from(json.loads(json.dumps(as_json(report)))) == report


def test_a_report_made_before_there_was_one_still_opens():
    older = as_json(made.make_report())
    del older["beliefs"]
    assert report_from(older).beliefs is None


def test_a_section_with_a_key_nobody_knows_is_refused_with_its_path():
    data = as_json(replace(made.make_report(), beliefs=make_section()))
    data["beliefs"]["rows"][0]["low"]["luck"] = 1
    with pytest.raises(NotAReport, match=r"report.beliefs.rows\[0\].low.luck: unknown"):
        report_from(data)


def test_a_belief_costs_what_its_dearer_end_costs():
    assert make_belief().regret == Decimal("140.00")
    assert make_belief(low=None).regret == Decimal("60.00")
    assert make_belief(low=None, high=None).regret == 0
    assert make_belief(high=None).ends == (make_end(),)


def test_a_belief_is_found_by_its_question():
    section = make_section()
    assert section.row("honey_price").answered == "$2.60"
    assert section.row("weather") is None
