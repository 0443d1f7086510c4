"""A yard fed and its comb booked: one number for all, exceptions by colony, cautions where the trade has them."""

import pytest
from django.urls import reverse

from inventory import stock
from inventory.gear import Gear
from inventory.models import Act, Feeding
from inventory.yardwork.boxes import super_up
from tests import makers
from tests.inventory.views.sending import faults, opened, said, send, text

pytestmark = pytest.mark.django_db
FEED, DRAW = f"{reverse('act-feed')}?yard=fern-hollow", f"{reverse('act-draw')}?yard=fern-hollow"


@pytest.fixture
def hives(yard):
    return [makers.make_colony(f"F-0{number}", yard=yard, gear=True) for number in (1, 2, 3)]


def own(colony):
    return f"own__{colony.pk}"


def test_a_whole_yard_is_fed_a_gallon_each_with_an_exception(client, keeper, shed, hives):
    """Two gallons and a half of 2:1 by weight hold 18.45 lb of sugar (7.38 lb a gallon, from ST densities)."""
    page = client.post(FEED, {"add": str(hives[1].pk), "every": "4", "ration": "syrup-2-1"})
    assert own(hives[1]) in page.context["form"].fields
    answer = send(client, FEED, every="4", ration="syrup-2-1", **{own(hives[1]): "2"})
    assert said(answer) == ["Fed 3 colonies 2.5 gal of syrup 2:1: 18 lb of white sugar of Shed."]
    assert stock.on_hand(shed)[Gear(part="sugar")] == 32
    assert [row.quantity for row in Feeding.objects.order_by("colony__tag")] == [4, 2, 4]


def test_a_hive_told_zero_gets_none_and_sugar_is_told_in_pounds(client, keeper, shed, hives):
    answer = send(client, FEED, every="5", ration="sugar", **{own(hives[0]): "0"})
    assert said(answer) == ["Fed 2 colonies 10 lb of dry sugar: 10 lb of white sugar of Shed."]


def test_more_than_the_store_has_is_said_and_booked_as_found(client, keeper, shed, hives):
    page = client.post(FEED, {"add": "x", "every": "40", "ration": "syrup-2-1"})
    words = "30 gal of syrup 2:1, 221 lb of sugar from the store, 171 lb beyond the book, booked as found"
    assert page.context["form"].result == words
    answer = send(client, FEED, every="40", ration="syrup-2-1")
    assert said(answer)[0].startswith(
        "Fed 3 colonies 30 gal of syrup 2:1: 221 lb of white sugar of Shed. 171 lb"
    )


def test_nothing_fed_and_a_wrong_number_are_refused(client, keeper, shed, hives):
    assert faults(send(client, FEED, every="0", ration="sugar"))[0].startswith("Nothing was given to feed")
    answer = send(client, FEED, every="201", ration="sugar")
    assert answer.context["form"].errors["every"]
    answer = send(client, FEED, every="1", ration="honey")
    assert answer.context["form"].errors["ration"]
    assert not Act.objects.filter(name="feed").exists()


def test_robbing_and_which_syrup_are_cautioned_and_supers_that_are_on(client, keeper, shed, hives):
    words = text(client.get(FEED))
    assert (
        "Caution: robbing" in words and "1:1 is spring feed" in words and "2:1 is for autumn stores" in words
    )
    assert "By the book supers are on" not in words
    super_up(colonies={hives[2]: 1}, source=shed, day=makers.DAY, who=None, key="up")
    assert "By the book supers are on F-03." in text(client.get(FEED))


def test_a_yard_without_bees_has_nobody_to_feed(client, keeper, shed, yard):
    assert "No living colony stands in Fern Hollow on this day" in text(client.get(FEED))


def test_before_the_colonies_started_there_is_nobody_to_feed(client, keeper, shed, hives):
    assert "No living colony stands in" in text(client.get(f"{FEED}&day=2025-03-01"))


@pytest.fixture
def drawing(hives):
    for number, hive in zip((10, 8, 0), hives, strict=True):
        if number:
            makers.put(hive, {"frame-medium-foundation": number})
    return hives


def test_the_comb_of_a_yard_is_drawn_as_far_as_it_has_foundation(client, keeper, drawing):
    page = client.get(DRAW)
    assert page.context["form"]["every"].value() == 10
    answer = send(client, DRAW, every="8", use="honey", **{own(drawing[0]): "10"})
    assert said(answer) == ["Comb drawn: 18 pieces on 2 colonies."]
    assert stock.on_hand(drawing[0])[Gear(part="comb-medium-honey")] == 10
    assert Gear(part="frame-medium-foundation") not in stock.on_hand(drawing[1])


def test_comb_drawn_under_a_treatment_is_kept_apart(client, keeper, drawing):
    send(client, DRAW, every="4", use="brood", treated="yes")
    assert stock.on_hand(drawing[0])[Gear(part="comb-medium-brood-treated")] == 4


def test_frames_beyond_the_book_are_booked_as_found(client, keeper, drawing):
    answer = send(client, DRAW, every="0", use="honey", **{own(drawing[2]): "3"})
    assert said(answer) == ["Comb drawn: 3 pieces on 1 colony. 3 pieces beyond the book booked as found."]


def test_a_resend_books_once(client, keeper, shed, drawing):
    fields = {**opened(client, DRAW), "use": "honey"}
    client.post(DRAW, fields)
    again = client.post(DRAW, fields, follow=True)
    assert said(again)[-1].startswith("This was sent before and is booked once.")
    assert Act.objects.filter(name="draw").count() == 1


def test_another_depth_is_chosen_by_the_address_and_nothing_drawn_is_refused(client, keeper, drawing):
    page = client.get(f"{DRAW}&foundation=frame-deep-foundation")
    assert "deep frame" in text(page)
    assert [hive.usual for hive in page.context["form"].hives] == [0, 0, 0]
    assert faults(send(client, DRAW, every="0", use="honey"))[0].startswith("Nothing was given to draw")
