"""A year of gear through the pages alone: ordered, received, moved, placed, lost a colony, salvaged, counted, undone."""

import datetime as dt
from io import StringIO

import pytest
from django.core.management import call_command
from django.urls import reverse

from inventory import stock
from inventory.gear import Condition, Gear
from inventory.models import Act, Order
from tests import makers
from tests.inventory.views.sending import said, send, text

pytestmark = pytest.mark.django_db
DEEP, MEDIUM = Gear(part="box-deep-10"), Gear(part="box-medium-10")


def act(client, name, query, day, **changed):
    """One act's page on a day; its message."""
    return said(send(client, f"{reverse(name)}?{query}&day=2025-{day}", **changed))[-1]


def test_a_year_by_pages_leaves_the_books_proven(client, keeper):
    shed, yard = makers.make_shed(), makers.make_yard("fern-hollow")
    offer = makers.make_offer({"box-deep-10": 5, "box-medium-10": 5, "comb-deep-brood": 20})
    order = makers.make_order({offer: 2}, placed_on=dt.date(2025, 1, 10))
    receive = f"{reverse('order-receive', args=[order.pk])}?day=2025-02-01"

    send(
        client,
        receive,
        **{"sound__box-deep-10": "6", "sound__box-medium-10": "9", "to_mend__box-medium-10": "1"},
    )
    send(client, receive)
    order.refresh_from_db()
    assert order.status == Order.Status.RECEIVED
    assert (
        act(client, "act-mend", "yard=shed", "02-10", **{"n__box-medium-10__to_mend": "1"})
        == "Mended 1 piece at Shed."
    )

    load = {"n__box-deep-10__sound": "6", "n__box-medium-10__sound": "10", "n__comb-deep-brood__sound": "40"}
    assert act(client, "act-move", "yard=fern-hollow&source=shed", "03-20", **load).startswith(
        "Hauled from Shed: 56 pieces"
    )
    colony = makers.make_colony("F-01", yard=yard, day=dt.date(2025, 4, 1))
    set_up = {"n__box-deep-10__sound": "2", "n__comb-deep-brood__sound": "20"}
    assert act(client, "act-place", f"colony={colony.pk}", "04-01", **set_up) == (
        "Placed 22 pieces from Fern Hollow to F-01."
    )
    act(client, "act-place", f"colony={colony.pk}", "05-20", **{"n__box-medium-10__sound": "3"})
    act(client, "act-take-off", f"colony={colony.pk}", "08-01", **{"n__box-medium-10__sound": "3"})

    send(client, f"{reverse('act-end', args=[colony.pk])}?day=2025-11-05", why="died")
    seen = f"colony={colony.pk}&closed=on&cause=mites&looked=no&suspected=no"
    told = act(client, "act-deadout", seen, "11-06")
    assert told == "Worked deadout F-01: 2 pieces saved, 20 held back, 0 scrapped, burnt or lost."

    count = send(client, f"{reverse('act-correct')}?yard=fern-hollow&day=2025-11-10", follow=False).url
    page = send(client, count, **{"n__box-medium-10__sound": "9"})
    posted = client.post(page.request["PATH_INFO"], {"shown": page.context["shown"]}, follow=True)
    assert said(posted) == ["Counted Fern Hollow: 1 piece missing."]
    act(client, "act-scrap", "yard=fern-hollow", "11-11", why="worn out", **{"n__box-deep-10__sound": "1"})
    scrapped = Act.objects.get(name="scrap")
    client.post(reverse("books-reverse", args=[scrapped.pk]))

    owned = stock.owned()
    assert (owned[DEEP], owned[MEDIUM]) == (10, 9)
    assert owned[Gear(part="comb-deep-brood", condition=Condition.HELD)] == 20
    assert owned[Gear(part="comb-deep-brood")] == 20
    assert stock.on_hand(shed)[DEEP] == 6 and stock.on_hand(yard)[DEEP] == 4
    assert stock.on_colony(colony) == {}
    assert "Deep box, 10 frames" in text(client.get(reverse("gear")))
    out = StringIO()
    call_command("check_books", stdout=out)
    assert out.getvalue().startswith("The books are right:")
