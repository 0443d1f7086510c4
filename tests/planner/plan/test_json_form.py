"""A stored report comes back as it was; another shape is refused with its place."""

import json
from dataclasses import replace
from decimal import Decimal

import pytest

from planner.plan import report_of
from planner.plan.json_form import NotAReport, as_json, report_from
from planner.plan.records import Rival
from tests.planner import made
from tests.planner.plan import small


def report():
    rival = Rival(
        name="a rule of thumb",
        how="by hand",
        spend=Decimal("180.00"),
        worth=Decimal("150.25"),
        gain=Decimal("49.75"),
        bad_year=Decimal("-3.10"),
        packs={"north-box": 1},
    )
    return report_of(small.operation(), small.assumptions(), small.problem(), small.plan(), rivals=(rival,))


def test_a_report_survives_the_way_to_text_and_back():
    made = report()
    assert report_from(json.loads(json.dumps(as_json(made)))) == made


def test_money_is_text_to_the_cent_and_days_are_plain():
    data = as_json(report())
    assert data["spend"] == "200.00"
    assert data["orders"][0]["lines"][0]["cost"] == "145.00"
    assert data["order_by"] == "2027-01-31"


def test_a_missing_key_is_refused_with_its_place():
    data = as_json(report())
    del data["orders"][0]["lines"][1]["cost"]
    with pytest.raises(NotAReport, match=r"report\.orders\[0\]\.lines\[1\]\.cost: missing"):
        report_from(data)


def test_a_report_from_before_a_section_was_told_is_read_without_it():
    made_now = made.make_report()
    data = as_json(made_now)
    del data["trial"]["by_yard"], data["bad_years"]
    trial = replace(made_now.trial, by_yard=None)
    assert report_from(data) == replace(made_now, trial=trial, bad_years=None)


def test_an_unknown_key_is_refused_with_its_place():
    data = as_json(report()) | {"weather": "fair"}
    with pytest.raises(NotAReport, match=r"report\.weather: unknown"):
        report_from(data)


def test_money_that_is_no_text_is_refused():
    data = as_json(report()) | {"spend": 200}
    with pytest.raises(NotAReport, match=r"report\.spend"):
        report_from(data)
