"""Boxes over a whole yard in a real browser: two taps from the yard, exceptions by tag, drawn, posted, undone."""

import pytest
from django.urls import reverse
from playwright.sync_api import expect

from apiary.models import Colony, Yard
from inventory import stock
from inventory.gear import Gear
from tests.browser.conftest import WIDTHS, hard_to_use, too_wide

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]

MEDIUM = Gear(part="box-medium-10")
NAMES = ("act-super-up", "act-pull", "act-brood-box")


def marks(sheet, tag):
    """How many boxes are dash-dotted at a hive."""
    hive = sheet.locator("[data-hive]", has_text=tag)
    return hive.locator(".placed").get_attribute("d").count("M")


def boxes_on(tag):
    return stock.on_hand(Colony.objects.get(tag=tag)).get(MEDIUM, 0)


def test_two_taps_from_the_yard_it_is_supered_up_with_an_exception_and_undone(sheet, live_server):
    sheet.set_viewport_size({"width": 390, "height": 844})
    sheet.goto(live_server.url + reverse("yard", args=["fern-hollow"]))
    sheet.locator(".thumb").get_by_role("link", name="Super up").click()
    button, result = sheet.locator("[data-post]"), sheet.locator("[data-result-boxes]")
    expect(button).to_have_text("Super up 7 colonies")  # nine living, less one of eight frames and a nuc
    expect(result).to_have_text("7 mediums go on, 7 stay in the store")
    sheet.get_by_role("button", name="F-05 gets a number of its own").click()
    own = sheet.locator(".pieces").get_by_role("button", name="One more: F-05")
    own.click()
    expect(result).to_have_text("8 mediums go on, 6 stay in the store")
    assert (marks(sheet, "F-05"), marks(sheet, "F-06"), marks(sheet, "F-03")) == (2, 1, 0)
    sheet.get_by_role("button", name="One more: medium box, 10 frames").click()
    expect(result).to_have_text("14 mediums go on, 0 stay in the store")
    own.click()
    expect(result).to_have_text("15 mediums go on, 1 beyond the book, booked as found")
    button.click()
    expect(sheet.get_by_role("status")).to_contain_text("Supered up 7 colonies with 15 supers")
    assert (boxes_on("F-05"), boxes_on("F-06"), boxes_on("F-03")) == (3, 2, 0)
    sheet.get_by_role("button", name="Undo").click()
    expect(sheet.get_by_role("status")).to_contain_text("Reversed: supered up")
    assert stock.on_hand(Yard.objects.get(code="fern-hollow"))[MEDIUM] == 14
    assert (boxes_on("F-05"), sheet.said) == (0, [])


def test_an_exception_goes_back_to_the_others(sheet, live_server):
    sheet.goto(live_server.url + reverse("act-super-up") + "?yard=fern-hollow")
    sheet.get_by_role("button", name="F-01 gets a number of its own").click()
    sheet.get_by_role("button", name="One fewer: F-01").click()
    expect(sheet.locator("[data-post]")).to_have_text("Super up 6 colonies")
    sheet.get_by_role("button", name="As the others for F-01").click()
    expect(sheet.locator("[data-post]")).to_have_text("Super up 7 colonies")


def test_it_works_without_script(browser, sheet, live_server):
    plain = browser.new_context(java_script_enabled=False, storage_state=sheet.context.storage_state())
    page = plain.new_page()
    page.goto(live_server.url + reverse("act-super-up") + "?yard=fern-hollow")
    page.get_by_role("button", name="F-05 gets a number of its own").click()
    page.get_by_role("spinbutton", name="F-05").fill("0")
    page.locator("[data-post]").click()
    expect(page.get_by_role("status")).to_contain_text("Supered up 6 colonies with 6 supers")
    plain.close()


def addresses(live_server):
    return [f"{live_server.url}{reverse(name)}?yard=fern-hollow" for name in NAMES]


def test_no_sheet_of_boxes_scrolls_sideways_or_complains(sheet, live_server):
    # 195: a phone of 390 with text at 200 %
    assert (too_wide(sheet, addresses(live_server), widths=(*WIDTHS, 195)), sheet.said) == ([], [])


@pytest.mark.parametrize(("scheme", "width"), [("light", 390), ("dark", 390), ("light", 1440)])
def test_every_sheet_of_boxes_is_accessible(sheet, live_server, scheme, width):
    assert hard_to_use(sheet, addresses(live_server), scheme=scheme, width=width) == {}
