"""An evening at the kitchen table by keyboard alone, and a load on a phone, in a real browser."""

import pytest
from django.urls import reverse
from playwright.sync_api import expect

from apiary.models import Keeper, Yard
from inventory import stock
from inventory.gear import Gear
from inventory.models import Act
from tests.browser.conftest import WIDTHS, hard_to_use, too_wide

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]


def pages(live_server):
    of_yard = "?yard=fern-hollow"
    plain = [reverse("evening"), reverse("lent"), reverse("act-lend") + "?source=shed"]
    plain += [reverse(name) + of_yard for name in ("act-feed", "act-draw", "act-scrap")]
    plain += [f"{reverse('act-move')}?source=fern-hollow&stops=shed&stops=long-acre"]
    return [live_server.url + address for address in plain]


def test_no_page_scrolls_sideways_or_complains(sheet, live_server):
    # 195: a phone of 390 with text at 200 %
    assert (too_wide(sheet, pages(live_server), widths=(*WIDTHS, 195)), sheet.said) == ([], [])


@pytest.mark.parametrize(("scheme", "width"), [("light", 390), ("dark", 1440)])
def test_every_page_is_accessible(sheet, live_server, scheme, width):
    assert hard_to_use(sheet, pages(live_server), scheme=scheme, width=width) == {}


def test_an_evening_is_told_and_booked_by_keyboard_alone(sheet, live_server):
    sheet.set_viewport_size({"width": 1440, "height": 900})
    sheet.goto(live_server.url + reverse("evening"))
    keys = sheet.keyboard
    sheet.get_by_label("Day, row 1", exact=True).fill("2025-05-20")
    sheet.get_by_label("What was done, row 1", exact=True).focus()
    keys.type("Haul")
    keys.press("Tab")
    keys.type("Fern hollow")
    keys.press("Tab")
    keys.type("medium box, 10 frames")
    keys.press("Tab")
    keys.type("4")
    keys.press("Tab")
    keys.type("shed")
    keys.press("Enter")
    expect(sheet.get_by_label("Day, row 2", exact=True)).to_be_focused()
    sheet.get_by_label("What was done, row 2", exact=True).focus()
    keys.type("Place")
    for words in ("f-01", "excluder-10", "1", "Fern Hollow"):
        keys.press("Tab")
        keys.type(words)
    expect(sheet.locator("[data-result]")).to_have_text("2 rows told")
    expect(sheet.locator("[data-post]")).to_have_text("Book 2 rows")
    keys.press("Control+Enter")
    expect(sheet.get_by_role("status")).to_contain_text("Booked 2 acts of 20 May 2025.")
    assert [act.name for act in Act.objects.order_by("-pk")[:2]] == ["place", "haul"]
    sheet.get_by_role("button", name="Undo").click()
    expect(sheet.get_by_role("status")).to_contain_text("Undone: 2 acts of the evening.")
    yard = Yard.objects.get(code="fern-hollow")
    assert stock.on_hand(yard)[Gear(part="box-medium-10")] == 14
    assert sheet.said == []


def test_rows_grow_below_the_last_one_and_a_fault_stands_below_its_row(sheet, live_server):
    sheet.set_viewport_size({"width": 1440, "height": 900})
    sheet.goto(live_server.url + reverse("evening"))
    sheet.get_by_label("Where, row 12", exact=True).fill("F-99")
    expect(sheet.get_by_label("Where, row 13", exact=True)).to_have_value("")
    sheet.get_by_label("What was done, row 12", exact=True).select_option("place")
    sheet.get_by_role("button", name="Book 1 row").click()
    expect(sheet.locator("#faults-12")).to_contain_text(
        "Row 12: 'F-99' is no colony and no yard of the books"
    )
    expect(sheet.get_by_label("Where, row 12", exact=True)).to_have_value("F-99")


def test_a_load_for_two_yards_is_measured_and_goes_over_the_limit_with_a_tick_on_a_phone(sheet, live_server):
    Keeper.objects.update(truck_lb=40)
    sheet.set_viewport_size({"width": 390, "height": 844})
    sheet.goto(live_server.url + f"{reverse('act-move')}?source=fern-hollow&stops=shed&stops=long-acre")
    for stop, times in (("Shed", 3), ("Long Acre", 6)):
        more = sheet.get_by_role("button", name=f"One more: Medium box, 10 frames, {stop}", exact=True)
        for _ in range(times):
            more.click()
    expect(sheet.locator("[data-result]")).to_have_text("9 pieces")
    # 9 × 4.98 lb; 9 × 19 7/8 × 16 1/4 × 6 5/8 in and a tenth are 12.26 cubic feet, whole ones 13
    expect(sheet.locator("[data-load-foot]")).to_have_text("45 lb, 13 cubic ft: more than the truck takes")
    expect(sheet.locator("[data-trips]")).to_have_text(
        "This load is 45 lb where your truck takes 40: that is 2 trips."
    )
    sheet.locator("[data-post]").click()
    expect(sheet.get_by_role("alert")).to_contain_text("Nothing was booked")
    sheet.get_by_label("Haul it all the same").check()
    sheet.locator("[data-post]").click()
    expect(sheet.get_by_role("status")).to_contain_text(
        "Hauled from Fern Hollow: 3 pieces to Shed, 6 pieces to Long Acre."
    )
    assert stock.on_hand(Yard.objects.get(code="fern-hollow"))[Gear(part="box-medium-10")] == 5
    assert not [
        each for each in sheet.said if "422" not in each
    ]  # the browser notes the page that asked for the tick


def test_a_yard_is_fed_with_an_exception_on_a_phone(sheet, live_server):
    sheet.set_viewport_size({"width": 390, "height": 844})
    sheet.goto(live_server.url + reverse("act-feed") + "?yard=fern-hollow")
    sheet.get_by_text("Syrup 2:1", exact=True).click()
    sheet.get_by_role("button", name="F-01").click()
    sheet.get_by_role("button", name="One fewer: F-01", exact=True).click()
    expect(sheet.locator("[data-post]")).to_have_text("Feed 9 colonies")
    expect(sheet.locator("[data-result-yardwide]")).to_contain_text(
        "8.75 gal of syrup 2:1, 65 lb of sugar from the store"
    )
    sheet.locator("[data-post]").click()
    expect(sheet.get_by_role("status")).to_contain_text(
        "Fed 9 colonies 8.75 gal of syrup 2:1: 65 lb of white sugar"
    )
    assert sheet.said == []
