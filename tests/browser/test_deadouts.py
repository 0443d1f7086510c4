"""A deadout worked on a phone: two taps from its yard, no keyboard, folded where booked and found agree."""

import pytest
from django.urls import reverse
from playwright.sync_api import expect

from apiary.models import Colony
from inventory.deadouts.work import work_deadout
from inventory.gear import Condition, Gear
from inventory.ledger import Piece
from inventory.models import Deadout
from inventory.stock import on_hand
from tests import makers
from tests.browser.conftest import WIDTHS, hard_to_use, too_wide

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]
PHONE = {"width": 390, "height": 844}


@pytest.fixture
def combed(outfit):
    """F-11 with drawn comb; F-12 worked, with foulbrood suspected."""
    for tag in ("F-11", "F-12"):
        colony = makers.make_colony(tag, yard=outfit)
        makers.put(colony, {"box-deep-10": 2, "comb-deep-brood": 20, "floor-10": 1, "cover-10": 1})
    seen = {"cause": "unknown", "brood_seen": True, "suspected": False}
    told = {"into": makers.make_shed(), "pieces": [Piece(part="comb-deep-brood", held=20)], "key": "first"}
    work_deadout(colony=colony, day=makers.DAY, who=None, **seen, **told)
    return Colony.objects.get(tag="F-11")


def addresses(colony):
    """Every page of deadouts and held gear."""
    row = Deadout.objects.get()
    pages = [reverse(name) for name in ("deadouts", "deadout-report", "held", "act-deadout")]
    pages += [reverse(name, args=[row.pk]) for name in ("deadout", "deadout-care", "deadout-word")]
    seen = f"{reverse('act-deadout')}?colony={colony.pk}"
    asked = "&closed=on&cause=starved&looked=no&suspected="
    return [
        *pages,
        seen,
        f"{seen}{asked}no",
        f"{seen}{asked}yes",
        f"{reverse('act-release')}?yard=shed&case={row.pk}",
    ]


def test_no_page_of_deadouts_scrolls_sideways_or_complains(sheet, live_server, combed):
    pages = [live_server.url + address for address in addresses(combed)]
    assert (too_wide(sheet, pages, widths=(*WIDTHS, 195)), sheet.said) == ([], [])


@pytest.mark.parametrize(("scheme", "width"), [("light", 390), ("dark", 1440)])
def test_every_page_of_deadouts_is_accessible(sheet, live_server, combed, scheme, width):
    pages = [live_server.url + address for address in addresses(combed)]
    assert hard_to_use(sheet, pages, scheme=scheme, width=width) == {}


def test_a_deadout_is_worked_by_thumb_and_undone(sheet, live_server, combed):
    sheet.set_viewport_size(PHONE)
    sheet.goto(live_server.url + reverse("yard", args=["fern-hollow"]))
    sheet.get_by_role("link", name="Work a deadout").click()
    sheet.get_by_role("link", name="F-11").click()
    expect(sheet.get_by_role("note").first).to_contain_text("close the hive first")
    sheet.get_by_label("The entrance is closed against robbing").check()
    sheet.get_by_role("radio", name="Starved").check()
    for legend, word in (("Was the brood looked at", "No"), ("Is foulbrood suspected", "No")):
        sheet.get_by_role("group", name=legend).get_by_role("radio", name=word).check()
    sheet.get_by_role("button", name="Go on to the pieces").click()

    folds = sheet.locator(".folded > details")
    assert folds.evaluate_all("(all) => all.filter((one) => one.open).length") == 0
    short = sheet.evaluate("document.documentElement.scrollHeight")
    assert short < 4 * PHONE["height"]
    box = sheet.locator(".folded", has_text="Deep box, 10 frames")
    box.locator("summary").first.click()
    box.get_by_role("button", name="One fewer: Deep box, 10 frames").first.click()
    expect(box.locator("[data-said]")).to_have_text("1 of 2 found, 1 missing")
    comb = sheet.locator(".folded", has_text="Deep drawn brood comb")
    expect(comb.locator("[data-fate]")).to_have_text("hold")
    expect(sheet.locator("[data-lost]")).to_have_text("$26.00")
    sheet.get_by_role("button", name="Book deadout F-11").click()

    expect(sheet.get_by_role("status")).to_contain_text(
        "Worked deadout F-11: 3 pieces saved, 20 held back, 1 "
    )
    shed = makers.make_shed()
    assert on_hand(shed)[Gear(part="comb-deep-brood", condition=Condition.HELD)] == 40
    sheet.get_by_role("button", name="Undo").first.click()
    expect(sheet.get_by_role("status")).to_contain_text("Reversed")
    combed.refresh_from_db()
    assert combed.ended_on is None and on_hand(combed)[Gear(part="comb-deep-brood")] == 20
    assert sheet.said == []


def test_a_suspicion_offers_no_way_back_into_stock(sheet, live_server, combed):
    asked = "&closed=on&cause=disease&looked=yes&suspected=yes"
    sheet.goto(f"{live_server.url}{reverse('act-deadout')}?colony={combed.pk}{asked}")
    expect(sheet.get_by_text("foulbrood").first).to_be_visible()
    fates = sheet.locator("[data-fate]").all_inner_texts()
    assert fates and set(fates) <= {"hold"}
