"""The history of a place and of a part: opening, in, out, closing, and the movements page by page."""

import datetime as dt

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext
from django.urls import reverse
from django.utils import timezone

from apiary.rights import HELPER
from inventory import ledger
from inventory.ledger import Line
from tests import makers
from tests.inventory.views.sending import text

pytestmark = pytest.mark.django_db
PERIOD = "?since=2025-05-01&until=2025-05-31"


def place(code="fern-hollow"):
    return reverse("gear-place", args=[code])


def test_a_store_tells_opening_in_out_and_closing(client, keeper, moved):
    told = text(client.get(reverse("gear-place", args=["shed"]) + PERIOD))
    assert "Deep box, 10 frames 8 5 3" in told  # opening, out, closing; nothing came
    assert "10 May 2025 Deep box, 10 frames sound, moved Shed to Fern Hollow 5" in told
    assert "Deep box, 10 frames 5 5" in text(client.get(place() + PERIOD))


def test_a_colony_has_a_history_of_its_gear(client, keeper, colony):
    told = text(client.get(reverse("gear-colony", args=[colony.pk]) + "?since=2025-04-01&until=2025-04-30"))
    assert "Deep box, 10 frames 2 2" in told and "opening stock" in told


def test_a_part_tells_its_places_and_the_outfit(client, keeper, moved):
    told = text(client.get(reverse("gear-part", args=["box-deep-10"]) + PERIOD))
    assert "Fern Hollow, store 5 5 Shed, store 8 5 3" in told
    assert "Whole outfit moves inside it left out 8 8" in told


def test_places_and_parts_lead_to_each_other_over_the_same_days(client, keeper, moved):
    page = client.get(place() + PERIOD).content.decode()
    query = "since=2025-05-01&amp;until=2025-05-31"
    assert f"{reverse('gear-part', args=['box-deep-10'])}?{query}" in page
    page = client.get(reverse("gear-part", args=["box-deep-10"]) + PERIOD).content.decode()
    assert f"{place('shed')}?{query}" in page


def test_without_days_it_is_the_year_up_to_today(client, keeper, shed):
    page = client.get(place("shed"))
    today = timezone.localdate()
    assert page.context["period"].last == today
    assert page.context["period"].first == today - dt.timedelta(days=365)


def test_days_the_wrong_way_round_are_told_and_passed_over(client, keeper, shed):
    page = client.get(place("shed") + "?since=2025-06-01&until=2025-05-01")
    assert "This is after the other day: give an earlier one." in text(page)
    assert page.status_code == 200


def test_a_long_history_goes_page_by_page(client, keeper, shed):
    for _ in range(26):
        ledger.scrap(at=shed, lines=[Line("sugar", 1)], day=makers.DAY, who=None, key=makers.fresh_key())
    told = client.get(place("shed") + "?since=2025-04-01&until=2025-04-30")
    assert "Page 1 of 2" in text(told)
    assert "since=2025-04-01&amp;until=2025-04-30&amp;page=2" in told.content.decode()


def test_a_place_without_anything_says_so(client, keeper, yard):
    assert "Nothing lay here in these days" in text(client.get(place()))


def test_what_is_not_there_is_not_found(client, keeper, shed):
    for name, key in (("gear-place", "nowhere"), ("gear-part", "nothing"), ("gear-colony", 999)):
        assert client.get(reverse(name, args=[key])).status_code == 404


def test_a_helper_sees_the_store_without_the_books(client, shed, moved, yard):
    client.force_login(makers.make_person("helper", role=HELPER, yards=[yard]))
    page = client.get(place() + PERIOD)
    assert page.status_code == 200 and "/books/" not in page.content.decode()
    assert client.get(place("shed")).status_code == 403


def test_a_long_history_asks_no_more_questions_than_a_short_one(client, keeper, shed):
    address = place("shed") + "?since=2025-04-01&until=2025-04-30"
    asked = []
    for times in (2, 30):
        for _ in range(times):
            ledger.scrap(at=shed, lines=[Line("sugar", 1)], day=makers.DAY, who=None, key=makers.fresh_key())
        with CaptureQueriesContext(connection) as queries:
            client.get(address)
        asked.append(len(queries))
    assert asked[0] == asked[1]
