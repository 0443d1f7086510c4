"""Loads, evenings and feed in a real browser: they fit a phone and a desktop, and anyone can use them."""

from dataclasses import replace

import pytest
from django.urls import reverse

from tests.browser.conftest import hard_to_use, too_wide
from tests.planner import made
from tests.planner.after import made as after_made

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]


def address(live_server):
    report = replace(made.make_report(), after=after_made.section())
    return live_server.url + reverse("run-after", args=[made.make_done_run(report=report).pk])


def test_the_page_of_loads_does_not_scroll_sideways_or_complain(sheet, live_server):
    assert (too_wide(sheet, [address(live_server)]), sheet.said) == ([], [])


@pytest.mark.parametrize("width", [390, pytest.param(1440, marks=pytest.mark.long)])
def test_the_page_of_loads_is_accessible(sheet, live_server, width):
    where = address(live_server)
    assert not hard_to_use(sheet, [where], scheme="light", width=width)
