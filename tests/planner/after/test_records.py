"""The section's own small answers, and that it is written and read back the same."""

import json

from planner.after.records import AfterSection
from planner.plan.json_form import _plain, _value
from tests.planner.after import made


def test_extra_trips_are_counted():
    assert made.section().extra_trips == 1


def test_it_is_written_and_read_back_the_same():
    section = made.section()
    assert _value(json.loads(json.dumps(_plain(section))), AfterSection, "after") == section
