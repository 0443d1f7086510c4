"""Planning again, since the run before, what-ifs, runs side by side and the belief check, in a real browser."""

import datetime as dt
import re
from dataclasses import replace
from decimal import Decimal

import pytest
from django.urls import reverse
from django.utils import timezone
from playwright.sync_api import expect

from planner.models import Run
from tests.browser.conftest import hard_to_use, too_wide
from tests.planner import made
from tests.planner.beliefs.samples import make_section
from tests.planner.outfit import make_outfit

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]


@pytest.fixture
def outfit(transactional_db):
    make_outfit()


def fewer_packs():
    """The report of a later day: four packs of the first line fewer, the fourth line gone."""
    report = made.make_report()
    first, second = report.orders
    line = replace(first.lines[0], packs=8, cost=first.lines[0].price * 8)
    less = first.lines[0].cost - line.cost
    orders = (
        replace(first, lines=(line, *first.lines[1:]), goods=first.goods - less, total=first.total - less),
        replace(
            second,
            lines=(second.lines[0], second.lines[2]),
            goods=second.goods - second.lines[1].cost,
            total=second.total - second.lines[1].cost,
        ),
    )
    return replace(report, orders=orders, spend=sum((order.total for order in orders), Decimal(0)))


def runs_of_a_year():
    """A season under way with its run of the winter, one planned again, and two what-ifs beside that."""
    today = timezone.localdate()
    season = made.make_season(starts_on=today - dt.timedelta(days=90))
    first = made.make_done_run(season, begun=season.starts_on)
    report = made.as_json(fewer_packs())
    again = made.make_run(
        season, status=Run.Status.DONE, report=report, day=today, begun=season.starts_on, message="Again."
    )
    beside = [
        made.make_run(
            season,
            status=Run.Status.DONE,
            report=first.report,
            parent=again,
            day=today,
            begun=season.starts_on,
            what_if=what_if,
        )
        for what_if in ({"prices": {"all": 10}}, {"answers": {"survival_share": 0.55}, "budget": "3000.00"})
    ]
    return season, first, again, beside


def pages(live_server):
    season, first, again, beside = runs_of_a_year()
    four = "&".join(f"run={run.pk}" for run in (first, again, *beside))
    made_of = [
        reverse("season-answers", args=[season.pk]),
        reverse("run-order", args=[again.pk]),
        reverse("run-order", args=[beside[0].pk]),
        reverse("run-what-if", args=[again.pk]),
        f"{reverse('runs-beside')}?run={first.pk}&run={again.pk}",
        f"{reverse('runs-beside')}?{four}",
    ]
    checking = made.make_run(
        season, parent=first, status=Run.Status.WORKING, stage="checking the beliefs, 3 of 34"
    )
    failed = made.make_run(season, parent=again, status=Run.Status.FAILED, message="The books moved.")
    made_of += [reverse("run", args=[run.pk]) for run in (checking, failed)]
    report = made.as_json(replace(made.make_report(), beliefs=make_section()))
    Run.objects.filter(pk=first.pk).update(report=report)
    made_of.append(reverse("run-order", args=[first.pk]))
    return [live_server.url + address for address in made_of]


def test_no_page_of_planning_again_scrolls_sideways_or_complains(sheet, live_server):
    assert (too_wide(sheet, pages(live_server)), sheet.said) == ([], [])


@pytest.mark.parametrize(
    ("scheme", "width"),
    [
        ("light", 390),
        ("dark", 1440),
        pytest.param("dark", 390, marks=pytest.mark.long),
        pytest.param("light", 1440, marks=pytest.mark.long),
    ],
)
def test_every_page_of_planning_again_is_accessible(sheet, live_server, scheme, width):
    assert hard_to_use(sheet, pages(live_server), scheme=scheme, width=width) == {}


@pytest.mark.parametrize("width", [390, pytest.param(1440, marks=pytest.mark.long)])
def test_a_season_is_planned_again_and_the_order_says_what_changed_since(sheet, live_server, width):
    season, first, again, _beside = runs_of_a_year()
    sheet.set_viewport_size({"width": width, "height": 844})
    sheet.goto(live_server.url + reverse("run-order", args=[again.pk]))
    expect(sheet.get_by_role("heading", name=f"Since run {first.pk}")).to_be_visible()
    changed = sheet.get_by_role("region", name=f"Lines that changed since run {first.pk}")
    expect(changed.get_by_role("row", name=re.compile("Medium box, flat"))).to_contain_text("$284.00 less")
    sheet.goto(live_server.url + reverse("season-answers", args=[season.pk]))
    expect(sheet.get_by_role("heading", name="Plan again from today")).to_be_visible()
    sheet.get_by_role("button", name="Plan again").click()
    expect(sheet.get_by_text("Waits for the planner to take it up")).to_be_visible()
    assert Run.objects.first().later_in_season and sheet.said == []


def test_a_what_if_is_asked_and_laid_beside_on_a_phone(sheet, live_server):
    _season, _first, again, beside = runs_of_a_year()
    sheet.set_viewport_size({"width": 390, "height": 844})
    sheet.goto(live_server.url + reverse("run-order", args=[again.pk]))
    sheet.get_by_role("link", name="What if").click()
    sheet.get_by_role("button", name="Work out the what-if").click()
    expect(sheet.get_by_role("alert").first).to_contain_text("Nothing is changed against run")
    sheet.get_by_role("button", name="Lay side by side").click()
    expect(sheet.get_by_role("heading", name="What each comes to")).to_be_visible()
    expect(sheet.get_by_text("all prices 10 % up").first).to_be_attached()
    sheet.get_by_role("link", name=f"Open run {beside[0].pk}").click()
    expect(sheet.get_by_text(f"A what-if beside run {again.pk}: all prices 10 % up")).to_be_visible()
    assert sheet.get_by_role("link", name="Approve the order").count() == 0


@pytest.mark.parametrize("width", [390, pytest.param(1440, marks=pytest.mark.long)])
def test_the_beliefs_are_checked_by_the_button_on_the_order(sheet, live_server, width):
    run = made.make_done_run(made.make_season(starts_on=dt.date(2025, 1, 15)))
    sheet.set_viewport_size({"width": width, "height": 844})
    sheet.goto(live_server.url + reverse("run-order", args=[run.pk]))
    sheet.get_by_role("button", name="Check the beliefs").click()
    expect(sheet.get_by_role("heading", name="Checking the beliefs")).to_be_visible()
    checking = Run.objects.first()
    Run.objects.filter(pk=run.pk).update(
        report=made.as_json(replace(made.make_report(), beliefs=make_section()))
    )
    Run.objects.filter(pk=checking.pk).update(status=Run.Status.DONE)
    sheet.wait_for_url(re.compile(rf"/runs/{run.pk}/order/#beliefs"))  # the page follows by itself
    expect(sheet.get_by_role("heading", name="What to find out")).to_be_in_viewport()
    expect(sheet.get_by_role("button", name="Check the beliefs again")).to_be_visible()
    assert sheet.said == []
