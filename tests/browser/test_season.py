"""A season in a real browser, on a phone and a desktop: begun, answered, worked out, its order read and approved."""

import re

import pytest
from django.core.management import call_command
from django.urls import reverse
from playwright.sync_api import expect

from inventory.models import Order
from planner.models import Run, Season
from tests.browser.conftest import hard_to_use, too_wide
from tests.planner import made
from tests.planner.outfit import make_outfit

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]


@pytest.fixture
def outfit(transactional_db):
    make_outfit()


@pytest.mark.parametrize("width", [390, pytest.param(1440, marks=pytest.mark.long)])
def test_a_season_is_begun_worked_out_and_approved(sheet, live_server, width):
    sheet.set_viewport_size({"width": width, "height": 844})
    sheet.get_by_role("link", name="Season", exact=True).click()
    sheet.get_by_label("Name of the season").fill("Winter order 2025")
    sheet.get_by_label("Day of the order").fill("2025-01-15")
    sheet.get_by_label("What may this order cost?").fill("1500")
    sheet.get_by_role("button", name="Begin the season").click()

    sheet.locator("summary", has_text="Flow and supers").click()
    sheet.get_by_label("How often do you get round").fill("10")
    sheet.get_by_role("button", name="Keep the answers").click()
    expect(sheet.get_by_role("status")).to_contain_text("Answers kept")
    assert Season.objects.get().answers == {"circuit_days": 10}

    sheet.get_by_text("How hard to look").click()
    sheet.get_by_label("Seasons drawn").fill("5")
    sheet.get_by_label("Fresh seasons to try the order on").fill("20")
    sheet.get_by_role("button", name="Work out the order").click()
    expect(sheet.get_by_text("Waits for the planner to take it up")).to_be_visible()
    call_command("work_runs", "--once")
    sheet.wait_for_url(re.compile(r"/runs/\d+/order/"))  # the page follows by itself

    why = sheet.get_by_text(re.compile("^Buy ")).first
    expect(why).to_be_hidden()
    sheet.locator(".opener summary").first.click()
    expect(why).to_be_visible()
    expect(sheet.get_by_role("img", name=re.compile("Budget as a dimension line"))).to_be_visible()
    expect(sheet.get_by_role("img", name="What each budget earns")).to_be_visible()
    expect(sheet.get_by_role("img", name=re.compile("Each order on 20 fresh seasons"))).to_be_visible()
    expect(sheet.get_by_role("region", name="Trial on fresh seasons")).to_contain_text("Knowing the future")

    sheet.get_by_role("link", name="Approve the order").click()
    sheet.get_by_role("button", name=re.compile(r"Approve \d orders?")).click()
    expect(sheet.get_by_role("status")).to_contain_text("Ordered: ")
    assert Order.objects.count() == len({order["supplier"] for order in Run.objects.get().report["orders"]})
    assert sheet.said == []


def test_the_order_draws_the_budget_curve_and_a_reason_tells_a_pack_more_and_a_pack_fewer(sheet, live_server):
    sheet.set_viewport_size({"width": 390, "height": 844})
    sheet.goto(live_server.url + reverse("run-order", args=[made.make_done_run().pk]))
    expect(sheet.get_by_role("img", name="What each budget earns")).to_be_visible()
    expect(sheet.get_by_text("drop 4 packs of 12")).to_be_visible()
    table = sheet.get_by_role("region", name="Budget curve")
    expect(table).to_be_hidden()
    sheet.get_by_text("The curve as a table").click()
    expect(table.get_by_role("row", name=re.compile("4,500"))).to_contain_text("this order")
    expect(table.get_by_role("row", name=re.compile("3,000"))).to_contain_text("the bend")

    more = sheet.get_by_text("costs $71 and should earn $40, so leave it").first
    expect(more).to_be_hidden()
    sheet.locator(".opener summary").first.click()
    expect(more).to_be_visible()
    expect(sheet.get_by_text("saves $71 and loses $113, so keep it").first).to_be_visible()
    expect(sheet.get_by_text("Were it 55 %").first).to_be_visible()
    assert sheet.said == []


def addresses():
    done = made.make_done_run()
    working = made.make_run(done.season, status=Run.Status.WORKING, stage="drawing the seasons", bound=6530)
    failed = made.make_run(done.season, status=Run.Status.FAILED, message="No supplier's price holds.")
    pages = [reverse("season"), reverse("season-answers", args=[done.season_id])]
    pages += [reverse("run", args=[run.pk]) for run in (done, working, failed)]
    return [*pages, reverse("run-approve", args=[done.pk])]


def test_no_page_of_the_season_scrolls_sideways_or_complains(sheet, live_server):
    pages = [live_server.url + address for address in addresses()]
    assert (too_wide(sheet, pages), sheet.said) == ([], [])


@pytest.mark.parametrize(
    ("scheme", "width"),
    [
        ("light", 390),
        ("dark", 1440),
        pytest.param("dark", 390, marks=pytest.mark.long),
        pytest.param("light", 1440, marks=pytest.mark.long),
    ],
)
def test_every_page_of_the_season_is_accessible(sheet, live_server, scheme, width):
    pages = [live_server.url + address for address in addresses()]
    assert hard_to_use(sheet, pages, scheme=scheme, width=width) == {}


def test_a_reason_opens_by_the_keyboard_alone(sheet, live_server):
    sheet.goto(live_server.url + reverse("run-order", args=[made.make_done_run().pk]))
    opener = sheet.locator(".opener summary").first
    opener.focus()
    sheet.keyboard.press("Enter")
    expect(sheet.get_by_text("Buy 60: in 31 seasons of 100")).to_be_visible()
    sheet.keyboard.press("Enter")
    expect(sheet.get_by_text("Buy 60: in 31 seasons of 100")).to_be_hidden()
