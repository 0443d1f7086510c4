"""Every page of inventory answers a keeper and sends a stranger to the door; acts carry what they must."""

import re

import pytest
from django.urls import reverse

from inventory import ledger
from inventory.ledger import Line
from inventory.models import Act, Sale
from inventory.urls import urlpatterns
from inventory.views.answering import leave_to
from inventory.yardwork.selling import Terms, sell
from tests import makers
from tests.inventory.views.made import count_pages
from tests.inventory.views.sending import text

pytestmark = pytest.mark.django_db


def addresses(colony, deadout):
    """An address of each page, by its name; those with several faces have several."""
    order, act = makers.make_order(), Act.objects.first()
    ones = {"order": [order.pk], "order-receive": [order.pk], "order-cancel": [order.pk]}
    ones |= {"books-act": [act.pk], "books-reverse": [act.pk], "act-end": [colony.pk]}
    ones |= count_pages(colony)
    ones |= {"sale-back": [a_sale(colony.yard).pk]}
    ones |= {"act-get-back": [a_loan(colony.yard).pk], "evening-undo": None}
    ones |= {"order-close": [order.pk], "sheet-to-fill-in": ["everything"]}
    ones |= {"order-send": [order.pk], "order-file": [order.pk], "supplier": [order.supplier_id]}
    ones |= {"print-yard": ["shed"], "print-count": ["shed"], "print-deadout": [deadout.pk]}
    elsewhere = ("load-sheet-tried", "order-reopen", "order-invoice", "order-claim", "order-claim-answer")
    ones |= dict.fromkeys(
        (*elsewhere, "deadout", "deadout-care", "deadout-word")
    )  # tried with what they are about
    pages = {
        path.name: [reverse(path.name, args=ones.get(path.name, []))]
        for path in urlpatterns
        if ones.get(path.name, []) is not None
    }
    pages["act-place"].append(f"{reverse('act-place')}?colony={colony.pk}")
    pages["act-take-off"].append(f"{reverse('act-take-off')}?colony={colony.pk}")
    pages["act-deadout"].append(f"{reverse('act-deadout')}?colony={deadout.pk}")
    pages["act-assemble"].append(f"{reverse('act-assemble')}?recipe=assemble-frame-deep")
    pages["act-correct"].append(f"{reverse('act-correct')}?colony={colony.pk}")
    pages["act-move"].append(f"{reverse('act-move')}?yard=no-such-yard&day=no-day")
    return [address for several in pages.values() for address in several]


def a_loan(yard):
    """A feeder lent out of the yard's store."""
    makers.put(yard, {"feeder-10": 1})
    told = {"source": yard, "to": "Invented Neighbour", "lines": [Line("feeder-10", 1)]}
    return ledger.lend(day=makers.DAY, who=None, key=makers.fresh_key(), **told).loan


def a_sale(yard):
    """A nuc sold, its box to come back."""
    nuc = makers.make_colony(yard=yard, hive_set="nuc-5", gear=True)
    terms = Terms(buyer="Invented Neighbour", owed=(Line("nuc-box-5", 1),), back_by=makers.DAY)
    told = {"goes": None, "stays_at": yard, "day": makers.DAY, "who": None, "key": makers.fresh_key()}
    sell(colonies=[nuc], terms=terms, **told)
    return Sale.objects.get()


def test_every_page_answers_a_keeper(client, keeper, shed, colony, deadout):
    wrong = {}
    for address in addresses(colony, deadout):
        answer = client.get(address)
        if answer.status_code != 200:
            wrong[address] = answer.status_code
    assert wrong == {}


def test_every_page_sends_a_stranger_to_the_door(client, shed, colony, deadout):
    for address in addresses(colony, deadout):
        for answer in (client.get(address), client.post(address)):
            assert answer.status_code == 302, address
            assert answer.url.startswith(reverse("sign-in")), address


def test_pages_that_show_one_thing_know_when_there_is_none(client, keeper):
    for name in ("order", "order-receive", "order-cancel", "books-act", "books-reverse", "act-end"):
        makers.make_shed()
        assert client.get(reverse(name, args=[999_999])).status_code == 404, name


def test_every_act_has_a_way_to_leave_a_key_and_no_ruler(client, keeper, shed, colony, deadout):
    for address in addresses(colony, deadout):
        elsewhere = (reverse("act-release"), reverse("print-haul"))  # leads to its choice; a sheet of paper
        if not address.startswith("/acts/") or address in elsewhere:
            continue
        answer = client.get(address)
        html = answer.content.decode()
        assert 'class="leave"' in html and '<nav class="nav"' not in html, address
        assert html.count("button filled") <= 1, address
        if 'id="act"' in html and answer.resolver_match.url_name != "act-deadout":
            assert re.search(r'name="key" value="[0-9a-f-]{36}"', html), address


def test_two_openings_of_a_sheet_have_two_keys(client, keeper, shed):
    keys = {client.get(reverse("act-scrap")).context["form"]["key"].value() for _ in range(2)}
    assert len(keys) == 2


def test_a_yard_leads_to_its_acts_and_a_colony_to_its_own(client, keeper, shed, colony, deadout):
    page = client.get(reverse("yard", args=["fern-hollow"])).content.decode()
    for name in ("act-move", "act-place", "act-take-off", "act-deadout", "act-correct", "act-use"):
        assert f'href="{reverse(name)}?yard=fern-hollow"' in page, name
    assert f'href="{reverse("act-deadout")}?colony={deadout.pk}"' in page
    page = client.get(reverse("colony", args=[colony.pk])).content.decode()
    assert f'href="{reverse("act-place")}?colony={colony.pk}"' in page
    page = client.get(reverse("colony", args=[deadout.pk])).content.decode()
    assert f'href="{reverse("act-deadout")}?colony={deadout.pk}"' in page


def test_leave_leads_to_the_first_place_known(yard, colony):
    assert leave_to(None, yard) == reverse("yard", args=["fern-hollow"])
    assert leave_to(colony, yard) == reverse("colony", args=[colony.pk])
    assert leave_to() == reverse("gear")


def test_the_day_is_told_at_the_head(client, keeper, shed):
    assert "Day today, " in text(client.get(reverse("act-scrap")))
    assert "Day Sun 20 Apr 2025" in text(client.get(reverse("act-scrap") + "?day=2025-04-20"))
