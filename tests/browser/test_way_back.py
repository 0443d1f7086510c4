"""A count sheet made, filled in, sent and looked at in a browser: both widths, accessible, silent in the console."""

import os

import pytest
from django.urls import reverse
from openpyxl import load_workbook

from inventory.models import Count
from tests.browser.conftest import sideways, violations

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]
SHOTS = os.environ.get("SHOTS")  # a folder for pictures of the pages


def looked_at(page, name):
    """Both widths: nothing scrolls sideways, nothing stands in the way of a screen reader."""
    for width in (390, 1440):
        page.set_viewport_size({"width": width, "height": 900})
        assert sideways(page) == 0 and violations(page) == []
        if SHOTS:
            page.screenshot(path=f"{SHOTS}/{name}-{width}.png", full_page=True)


def test_a_count_goes_out_on_paper_and_comes_back_as_a_draft(sheet, live_server, settings, tmp_path):
    settings.DATA_DIR = tmp_path
    sheet.goto(live_server.url + reverse("load-sheet"))
    looked_at(sheet, "load")
    sheet.get_by_label("Fern Hollow").check()
    with sheet.expect_download() as download:
        sheet.get_by_role("button", name="Make the count sheet").click()
    path = tmp_path / "filled-in.xlsx"
    download.value.save_as(path)
    book = load_workbook(path)
    for row, quantity in ((2, 12), (3, 126)):
        book["Counted"].cell(row, 6, quantity)
    book.save(path)

    sheet.get_by_label("Workbook (.xlsx)").set_input_files(path)
    sheet.get_by_role("button", name="Try the workbook").click()
    assert sheet.get_by_role("cell", name="2 missing").is_visible()
    looked_at(sheet, "tried")
    assert not Count.objects.exists()
    sheet.get_by_role("button", name="Make the drafts").click()
    sheet.wait_for_url(live_server.url + reverse("count", args=[Count.objects.get().pk]))
    assert sheet.get_by_text("Made 1 draft of counts").is_visible()
    assert sheet.said == []
