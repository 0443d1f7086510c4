"""The pages of gear, acts, orders and books in a real browser: widths, dark and light, steppers, one-handed acts."""

import re

import pytest
from django.urls import reverse
from playwright.sync_api import expect

from apiary.models import Colony, Yard
from inventory import stock
from inventory.gear import Gear
from inventory.models import Act, Order
from tests.browser.conftest import WIDTHS, hard_to_use, too_wide, violations

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]

DEEP = "Deep box, 10 frames"


def addresses():
    live, dead, order = Colony.objects.get(tag="F-01"), Colony.objects.get(tag="F-10"), Order.objects.get()
    act = Act.objects.order_by("pk").first()
    of_yard = f"?yard={Yard.objects.get(code='fern-hollow').code}"
    plain = [reverse(name) for name in ("gear", "orders", "books")]
    plain += [reverse(name, args=[order.pk]) for name in ("order", "order-receive", "order-cancel")]
    plain += [reverse(name, args=[act.pk]) for name in ("books-act", "books-reverse")]
    names = ("move", "place", "assemble", "mend", "mark", "scrap", "burn", "use", "correct", "salvage")
    acts = [reverse(f"act-{name}") + of_yard for name in names]
    acts += [f"{reverse('act-place')}?colony={live.pk}", f"{reverse('act-take-off')}?colony={live.pk}"]
    acts += [f"{reverse('act-salvage')}?colony={dead.pk}", reverse("act-end", args=[live.pk])]
    acts += [f"{reverse('act-assemble')}?recipe=assemble-frame-deep"]
    return [*plain, *acts]


def test_no_page_scrolls_sideways_or_complains(sheet, live_server):
    # 195: a phone of 390 with text at 200 %
    pages = [live_server.url + address for address in addresses()]
    assert (too_wide(sheet, pages, widths=(*WIDTHS, 195)), sheet.said) == ([], [])


@pytest.mark.parametrize(
    ("scheme", "width"), [("light", 390), ("dark", 390), pytest.param("light", 1440, marks=pytest.mark.long)]
)
def test_every_page_is_accessible(sheet, live_server, scheme, width):
    pages = [live_server.url + address for address in addresses()]
    assert hard_to_use(sheet, pages, scheme=scheme, width=width) == {}


def test_two_taps_from_the_yard_gear_is_loaded_and_the_act_undone(sheet, live_server):
    sheet.set_viewport_size({"width": 390, "height": 844})
    yard = Yard.objects.get(code="fern-hollow")
    sheet.goto(live_server.url + reverse("yard", args=["fern-hollow"]))
    sheet.locator(".thumb").get_by_role("link", name="Haul a load").click()
    sheet.get_by_label("Goes to the store of").select_option("shed")
    more = sheet.get_by_role("button", name="One more: Medium box, 10 frames", exact=True)
    for _ in range(3):
        more.click()
    button = sheet.locator("[data-post]")
    expect(button).to_have_text("Haul 3 pieces")
    sheet.get_by_role("button", name="All 3 of Queen excluder, 10 frames").click()
    expect(sheet.locator("[data-result]")).to_have_text("6 pieces")
    expect(sheet.locator("[data-load=lb] [data-load-amount]")).to_have_text(
        "21"
    )  # 3 × 4.98 + 3 × 1.80 = 20.34, whole pounds
    button.click()
    expect(sheet.get_by_role("status")).to_contain_text("Hauled from Fern Hollow: 6 pieces to Shed.")
    assert stock.on_hand(yard)[Gear(part="box-medium-10")] == 11
    sheet.get_by_role("button", name="Undo").click()
    expect(sheet.get_by_role("status")).to_contain_text("Reversed: hauled")
    assert sheet.get_by_role("heading", level=1).inner_text() == "Fern Hollow"
    assert stock.on_hand(yard)[Gear(part="box-medium-10")] == 14
    assert sheet.said == []


def test_a_stepper_runs_on_while_it_is_held_and_stops(sheet, live_server):
    sheet.goto(live_server.url + reverse("act-scrap") + "?yard=fern-hollow")
    more = sheet.get_by_role("button", name="One more: White sugar")
    field = sheet.get_by_role("spinbutton", name="White sugar")
    more.hover()
    sheet.mouse.down()
    expect(field).not_to_have_value(re.compile("^[0-4]$"), timeout=5000)
    sheet.mouse.up()
    held = int(field.input_value())
    assert held >= 5
    more.click()
    expect(field).to_have_value(str(held + 1))
    sheet.get_by_role("button", name="One fewer: White sugar").click()
    expect(field).to_have_value(str(held))


def test_an_overloaded_truck_is_drawn_and_cautioned(sheet, live_server):
    sheet.goto(live_server.url + reverse("act-move") + "?source=fern-hollow")
    caution = sheet.get_by_text("Caution: more than the truck takes")
    expect(caution).to_be_hidden()
    sheet.get_by_role("spinbutton", name="Medium box, 10 frames", exact=True).fill("400")
    expect(caution).to_be_visible()
    expect(sheet.locator("[data-load=lb] [data-load-amount]")).to_have_text("1,992")


def test_steppers_and_acts_work_without_scripts(sheet, live_server, browser):
    plain = browser.new_context(java_script_enabled=False)
    plain.add_cookies(sheet.context.cookies())
    page = plain.new_page()
    page.goto(live_server.url + reverse("act-correct") + "?yard=shed")
    page.get_by_role("button", name="Begin the count").click()
    page.get_by_role("spinbutton", name=DEEP).fill("5")
    page.get_by_role("button", name="Show the differences").click()
    page.get_by_role("button", name="Correct 1 kind in the book").click()
    expect(page.get_by_role("status")).to_contain_text("Counted Shed: 1 piece missing.")
    plain.close()


def test_a_count_tells_more_and_missing_as_it_goes(sheet, live_server):
    sheet.goto(live_server.url + reverse("act-correct") + "?yard=shed")
    sheet.get_by_role("button", name="Begin the count").click()
    row = sheet.locator("[data-row]", has_text=DEEP)
    sheet.get_by_role("button", name=f"One more: {DEEP}").click()
    expect(row.locator("[data-difference]")).to_have_text("1 more")
    row.get_by_role("spinbutton").fill("4")
    expect(row.locator("[data-difference]")).to_have_text("2 missing")
    row.get_by_role("spinbutton").fill("")
    expect(row.locator("[data-difference]")).to_have_text("not counted")


def test_an_order_is_received_in_one_press_from_this_week(sheet, live_server):
    sheet.goto(live_server.url + "/")
    sheet.get_by_role("link", name="Receive").click()
    expect(sheet.locator("[data-result]")).to_have_text("All that is owed came")
    sheet.get_by_role("button", name="One fewer: medium box, 10 frames, sound").click()
    expect(sheet.locator("[data-result]")).to_have_text("1 stay owed")
    sheet.get_by_role("button", name="Receive 9 pieces").click()
    expect(sheet.get_by_role("status")).to_contain_text("Received 9 pieces into the store of Shed.")


def test_a_part_opens_to_its_places_by_the_keyboard(sheet, live_server):
    sheet.goto(live_server.url + reverse("gear"))
    part = sheet.locator("summary", has_text=DEEP)
    places = sheet.get_by_text("Shed, store: 6")
    expect(places).to_be_hidden()
    part.focus()
    sheet.keyboard.press("Enter")
    expect(places).to_be_visible()
    sheet.get_by_role("link", name=f"History of {DEEP}").click()
    assert sheet.get_by_role("heading", level=1).inner_text() == DEEP


def test_a_refused_act_keeps_what_was_typed_and_more_than_the_book_has_is_found(sheet, live_server):
    sheet.goto(live_server.url + reverse("act-scrap") + "?yard=shed")
    sheet.get_by_role("spinbutton", name=DEEP).fill("9")
    sheet.locator("[data-post]").click()
    expect(sheet.get_by_role("alert")).to_be_visible()
    expect(sheet.get_by_role("spinbutton", name=DEEP)).to_have_value("9")
    assert violations(sheet) == []
    sheet.locator("[name=why]").first.check()
    sheet.locator("[data-post]").click()
    expect(sheet.get_by_role("status")).to_contain_text("3 pieces beyond the book booked as found.")
