"""A signed-in page on a small invented outfit, and what every page is checked for."""

import pytest
from axe_playwright_python.sync_playwright import Axe
from django.utils import timezone

from apiary import people
from tests import makers

WIDTHS = (360, 390, 768, 1440)


@pytest.fixture
def outfit(transactional_db):
    """Two yards and a shed: stacks of every kind, a store, flows, a deadout, an order owed."""
    makers.make_keeper()
    shed = makers.make_shed()
    yard = makers.make_yard(
        "fern-hollow", stands=10, gate="4417", emergency="218 Fern Hollow Lane, second field gate"
    )
    makers.make_yard("long-acre", stands=24)
    makers.make_window(yard, name="Maple and fruit", first_week=15, last_week=19, gain_lb=12)
    makers.make_window(yard, name="Clover, basswood", first_week=23, last_week=29, gain_lb=68)
    for number, hive_set in enumerate(("two-deeps-10", "one-deep-10", "two-deeps-8", "nuc-5"), start=1):
        makers.make_colony(f"F-{number:02}", yard=yard, hive_set=hive_set, gear=True)
    for number in range(5, 10):
        makers.make_colony(f"F-{number:02}", yard=yard, gear=True)
    makers.make_dead_colony(tag="F-10", yard=yard, gear=True)
    makers.put(yard, {"box-medium-10": 14, "comb-medium-honey": 126, "excluder-10": 3, "sugar": 100})
    makers.put(shed, {"box-deep-10": 6})
    makers.make_order()
    return yard


@pytest.fixture
def sheet(page, live_server, outfit):
    """A page let in by a one-time link; collects every console message and error."""
    page.said = []
    page.on("console", lambda message: page.said.append(message.text))
    page.on("pageerror", lambda error: page.said.append(str(error)))
    keeper = makers.make_person("keeper", is_superuser=True, is_staff=True)
    link = people.path_of(people.make_link(keeper, now=timezone.now()))
    page.goto(live_server.url + link)
    page.get_by_role("button", name="Sign in").click()
    page.wait_for_url(live_server.url + "/")
    return page


def sideways(page):
    """Pixels by which a page is wider than its window."""
    return page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth")


def violations(page):
    """What an automatic reading finds against WCAG 2.2 AA and good practice, with the element it is at."""
    found = Axe().run(page).response["violations"]
    return [f"{each['id']}: {node['html'][:120]}" for each in found for node in each["nodes"]]


def open_all(page):
    page.evaluate("for (const fold of document.querySelectorAll('main details')) fold.open = true")


def too_wide(page, addresses, *, widths=WIDTHS):
    """A line for each address and width at which its page, all folds open, scrolls sideways."""
    wrong = []
    for address in addresses:
        page.goto(address)
        open_all(page)
        for width in widths:
            page.set_viewport_size({"width": width, "height": 844})
            if sideways(page) > 0:
                wrong.append(f"{address} at {width}: {sideways(page)} px too wide")
    return wrong


def hard_to_use(page, addresses, *, scheme, width):
    """{address: what an automatic reading finds} with all folds open, of those with anything found."""
    page.emulate_media(color_scheme=scheme)
    page.set_viewport_size({"width": width, "height": 900})
    found = {}
    for address in addresses:
        page.goto(address)
        open_all(page)
        if faults := violations(page):
            found[address] = faults
    return found
