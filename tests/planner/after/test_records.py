"""The section's own small answers, and that it is written and read back the same."""

import json

from planner.after.records import AfterSection
from planner.plan.json_form import _plain, _value
from tests.planner.after import made


def test_extra_trips_are_counted_and_loads_found_by_week():
    section = made.section()
    assert section.extra_trips == 1
    assert [load.number for load in section.of_week(28)] == [2, 3]


def test_it_is_written_and_read_back_the_same():
    section = made.section()
    assert _value(json.loads(json.dumps(_plain(section))), AfterSection, "after") == section
