"""Counting with a phone in the hand: blind, row by row kept, the difference seen, explained, then posted and undone."""

import pytest
from django.urls import reverse
from playwright.sync_api import expect

from apiary.models import Colony, Yard
from inventory import counting, ledger, stock
from inventory.gear import Gear
from inventory.ledger import Line
from inventory.models import Count
from tests import makers
from tests.browser.conftest import WIDTHS, hard_to_use, too_wide

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]
BOX, EXCLUDER = "Medium box, 10 frames", "Queen excluder, 10 frames"


@pytest.fixture
def addresses(sheet, live_server):
    """A draft with differences and explanations, a posted count, found gear, histories."""
    yard, shed = Yard.objects.get(code="fern-hollow"), Yard.objects.get(is_shed=True)
    told = {"day": makers.DAY, "who": None}
    posted = counting.begin(location=shed, key="posted", **told)
    counting.enter(posted, [(shed, "box-deep-10", "sound", 6)])
    counting.post_count(posted, who=None)
    draft = counting.begin(location=yard, key="draft", with_colonies=True, **told)
    rows = [(yard, "box-medium-10", "sound", 12), (yard, "comb-medium-honey", "sound", 106)]
    hive = Colony.objects.get(tag="F-01")
    counting.enter(draft, [*rows, (yard, "box-deep-10", "sound", 2), (hive, "box-deep-10", "sound", 0)])
    blind = counting.begin(location=yard, key="blind", blind=True, with_colonies=True, **told)
    lines = [Line("cover-10", 2)]
    act = ledger.move(source=yard, target=shed, lines=lines, key="found", found_allowed=True, **told)
    found = act.movements.get(found=True)
    names = [("counts",), ("count", draft.pk), ("count", posted.pk), ("count-enter", draft.pk)]
    names += [("count-enter", blind.pk), ("found", found.pk), ("gear-place", "fern-hollow")]
    names += [("gear-part", "box-medium-10"), ("gear-colony", hive.pk), ("home",)]
    pages = [reverse(name, args=keys) for name, *keys in names]
    return [live_server.url + page for page in [*pages, reverse("act-correct") + "?yard=fern-hollow"]]


def test_no_page_scrolls_sideways_or_complains(sheet, addresses):
    assert (too_wide(sheet, addresses, widths=(*WIDTHS, 195)), sheet.said) == ([], [])


@pytest.mark.parametrize(("scheme", "width"), [("light", 390), ("dark", 390), ("light", 1440)])
def test_every_page_is_accessible(sheet, addresses, scheme, width):
    assert hard_to_use(sheet, addresses, scheme=scheme, width=width) == {}


def test_a_blind_count_with_one_difference(sheet, live_server):
    sheet.set_viewport_size({"width": 390, "height": 844})
    yard = Yard.objects.get(code="fern-hollow")
    sheet.goto(live_server.url + reverse("act-correct") + f"?yard=fern-hollow&day={makers.DAY.isoformat()}")
    sheet.get_by_text("Blind", exact=True).click()
    sheet.get_by_role("button", name="Begin the count").click()
    result, kept = sheet.locator("[data-result]"), sheet.locator("[data-kept]")
    expect(result).to_have_text("Nothing is counted yet")
    expect(sheet.locator(".booked")).to_have_count(0)
    box = sheet.get_by_role("spinbutton", name=BOX)
    expect(box).to_have_value("")
    box.fill("12")
    sheet.get_by_role("button", name=f"One more: {EXCLUDER}").click()
    more = sheet.get_by_role("button", name=f"One more: {EXCLUDER}")
    more.click()
    more.click()
    expect(result).to_have_text("2 of 4 kinds counted")
    expect(kept).to_have_text("Kept in the draft")
    sheet.reload()
    expect(box).to_have_value("12")
    sheet.get_by_role("button", name="Show the differences").click()
    row = sheet.get_by_role("row", name=BOX)
    expect(row).to_contain_text("2 missing")
    expect(sheet.get_by_text("1 agrees")).to_be_visible()
    assert stock.on_hand(yard)[Gear(part="box-medium-10")] == 14
    sheet.get_by_role("button", name="Correct 1 kind in the book").click()
    expect(sheet.get_by_role("status")).to_contain_text("Counted Fern Hollow: 2 pieces missing.")
    assert stock.on_hand(yard)[Gear(part="box-medium-10")] == 12
    assert stock.on_hand(yard)[Gear(part="sugar")] == 100
    sheet.get_by_role("button", name="Undo").click()
    expect(sheet.get_by_text("taken back on")).to_be_visible()
    assert stock.on_hand(yard)[Gear(part="box-medium-10")] == 14
    assert sheet.said == []


def test_zero_is_one_press_and_no_answer_is_tried_again(sheet, live_server):
    sheet.goto(live_server.url + reverse("act-correct") + "?yard=fern-hollow")
    sheet.get_by_text("Blind", exact=True).click()
    sheet.get_by_role("button", name="Begin the count").click()
    kept = sheet.locator("[data-kept]")
    expect(sheet.locator("[data-result]")).to_have_text("Nothing is counted yet")
    sheet.context.set_offline(True)
    sheet.get_by_role("button", name=f"One fewer: {BOX}").click()
    expect(sheet.get_by_role("spinbutton", name=BOX)).to_have_value("0")
    expect(kept).to_contain_text("Not kept yet")
    sheet.context.set_offline(False)
    expect(kept).to_have_text("Kept in the draft", timeout=15_000)
    assert Count.objects.get().lines.get().quantity == 0
