"""The trial's part of a report goes to JSON and back unchanged."""

import json

from planner.plan.json_form import as_json, report_from
from tests.planner import made


def test_trial_and_curve_come_back_as_they_went():
    report = made.make_report()
    assert report_from(json.loads(json.dumps(as_json(report)))) == report


def test_a_report_without_them_does_too():
    report = made.make_report(trial=None, bad_years=None)
    assert report_from(json.loads(json.dumps(as_json(report)))) == report


def test_this_order_is_found_among_the_rows():
    assert made.make_trial().ours.name == "this order"
