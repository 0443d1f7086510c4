"""Acts on bees in a real browser: a split from the yard's page without a keyboard, widths, dark and light, readable."""

import pytest
from django.urls import reverse
from playwright.sync_api import expect

from apiary.models import Colony
from inventory.stock import on_hand
from tests.browser.conftest import WIDTHS, hard_to_use, too_wide

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]
NAMES = ("split", "requeen", "hive", "unite", "sell", "move-colonies", "lose-yard")


def addresses():
    live, nuc = Colony.objects.get(tag="F-01"), Colony.objects.get(tag="F-04")
    of_yard = [f"{reverse(f'act-{name}')}?yard=fern-hollow" for name in NAMES]
    of_colony = [f"{reverse(f'act-{name}')}?colony={live.pk}" for name in ("split", "unite", "sell")]
    return [*of_yard, *of_colony, f"{reverse('act-hive')}?colony={nuc.pk}"]


def test_no_page_of_bees_scrolls_sideways_or_complains(sheet, live_server):
    pages = [live_server.url + address for address in addresses()]
    assert (too_wide(sheet, pages, widths=(*WIDTHS, 195)), sheet.said) == ([], [])


@pytest.mark.parametrize(
    ("scheme", "width"), [("light", 390), ("dark", 390), pytest.param("light", 1440, marks=pytest.mark.long)]
)
def test_every_page_of_bees_is_accessible(sheet, live_server, scheme, width):
    pages = [live_server.url + address for address in addresses()]
    assert hard_to_use(sheet, pages, scheme=scheme, width=width) == {}


def test_two_taps_from_the_yard_the_strongest_are_split_and_the_act_undone(sheet, live_server):
    sheet.set_viewport_size({"width": 390, "height": 844})
    strong = Colony.objects.get(tag="F-05")
    Colony.objects.filter(pk=strong.pk).update(strength="strong")
    sheet.goto(live_server.url + reverse("yard", args=["fern-hollow"]))
    sheet.get_by_role("link", name="Split", exact=True).first.click()
    more = sheet.get_by_role("button", name="One more: Splits in all", exact=True)
    more.click()
    expect(sheet.locator("[data-post-bees]")).to_have_text("Make 1 split")
    expect(sheet.locator("[data-result-bees]")).to_have_text("5 combs go along")
    more.click()
    sheet.get_by_text("nuc, 5 frames", exact=True).click()
    sheet.locator("[data-post-bees]").click()
    expect(sheet.locator(".message")).to_contain_text("Split F-01 and F-05: F-11 and F-12 started")
    assert Colony.objects.get(tag="F-12").mother == strong
    assert {piece.part: number for piece, number in on_hand(Colony.objects.get(tag="F-11")).items()} == {
        "comb-deep-brood": 5,
        "nuc-box-5": 1,
    }
    sheet.get_by_role("button", name="Undo").click()
    expect(sheet.locator(".message").first).to_contain_text("Reversed: split")
    assert not Colony.objects.filter(tag="F-11").exists()


def test_colonies_are_pressed_and_weighed_before_they_move(sheet, live_server):
    sheet.set_viewport_size({"width": 390, "height": 844})
    sheet.goto(f"{live_server.url}{reverse('act-move-colonies')}?yard=fern-hollow")
    sheet.get_by_role("button", name="None", exact=True).click()
    expect(sheet.locator("[data-post-bees]")).to_have_text("Move 0 colonies")
    sheet.get_by_text("F-01", exact=True).click()
    expect(sheet.locator("[data-post-bees]")).to_have_text("Move 1 colony")
    expect(sheet.locator("[data-sum=lb]")).to_have_text("50")
    sheet.get_by_label("They go to").select_option("long-acre")
    sheet.locator("[data-post-bees]").click()
    expect(sheet.locator(".message")).to_contain_text("Moved F-01 to Long Acre")
    assert Colony.objects.get(tag="F-01").yard.code == "long-acre"
