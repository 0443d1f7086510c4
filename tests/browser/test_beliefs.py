"""The belief check in a real browser, on a phone and a desktop: three named, bars drawn, a table beside them."""

from dataclasses import replace

import pytest
from django.urls import reverse
from playwright.sync_api import expect

from tests.browser.conftest import hard_to_use, too_wide
from tests.planner import made
from tests.planner.beliefs.samples import make_section

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]


@pytest.mark.parametrize("width", [390, 1440])
def test_what_to_find_out_is_told_and_drawn(sheet, live_server, width):
    run = made.make_done_run(report=replace(made.make_report(), beliefs=make_section()))
    sheet.set_viewport_size({"width": width, "height": 844})
    sheet.goto(live_server.url + reverse("run-order", args=[run.pk]))
    expect(sheet.get_by_role("heading", name="What to find out")).to_be_visible()
    expect(sheet.get_by_text("Count the living hives at the first look in spring.")).to_be_visible()
    drawing = sheet.get_by_role("img", name="What this order loses against the best")
    expect(drawing).to_be_visible()
    expect(drawing).to_contain_text("55 %: $140")
    sheet.get_by_text("All answers tried, as a table").click()
    expect(sheet.get_by_role("region", name="Answers lower and higher")).to_be_visible()
    address = live_server.url + reverse("run-order", args=[run.pk])
    assert too_wide(sheet, [address], widths=(width,)) == []
    assert hard_to_use(sheet, [address], scheme="light", width=width) == {}
    assert sheet.said == []
