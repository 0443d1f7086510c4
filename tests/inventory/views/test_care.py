"""Assemble, mend, set aside, scrap, burn and use through their pages."""

import pytest
from django.urls import reverse

from inventory import stock
from inventory.gear import Condition, Gear
from tests import makers
from tests.inventory.views.sending import faults, said, send, text

pytestmark = pytest.mark.django_db


@pytest.fixture(autouse=True)
def signed_in(keeper):
    return keeper


def of(ground, part, condition="sound"):
    return stock.on_hand(ground).get(Gear(part=part, condition=Condition(condition)), 0)


def test_assembling_offers_first_what_can_be_made_here(client, shed):
    makers.put(shed, {"box-medium-10-flat": 6})
    words = text(client.get(reverse("act-assemble")))
    assert "6 can be made of what is here" in words
    assert "lacks deep box, 8 frames, in pieces (0 here, 1 wanted)" in words


def test_all_that_can_be_made_is_one_press(client, shed):
    makers.put(shed, {"box-medium-10-flat": 6})
    answer = send(client, f"{reverse('act-assemble')}?yard=shed&recipe=assemble-box-medium-10")
    assert said(answer) == ["Assembled 6 × medium box, 10 frames at Shed."]
    assert (of(shed, "box-medium-10"), of(shed, "box-medium-10-flat")) == (6, 0)


def test_more_than_there_is_can_be_assembled_only_as_found(client, shed):
    makers.put(shed, {"box-medium-10-flat": 6})
    address = f"{reverse('act-assemble')}?yard=shed&recipe=assemble-box-medium-10"
    answer = send(client, address, times="7")
    assert "7 of medium box, 10 frames, in pieces wanted" in faults(answer)[0]
    assert "book 1 of medium box, 10 frames, in pieces as found" in text(answer)
    send(client, address, times="7", found="on")
    assert of(shed, "box-medium-10") == 7


def test_assembling_no_times_is_refused(client, shed):
    answer = send(client, f"{reverse('act-assemble')}?yard=shed&recipe=assemble-box-medium-10", times="0")
    assert faults(answer) == [
        "assemble and paint a medium box, 10 frames: 0 is not a number of pieces: "
        "give a whole number from 1 to 1000000."
    ]


def test_what_is_to_mend_is_sound_again(client, shed):
    makers.put(shed, {"cover-10": 3}, condition="to mend")
    page = client.get(reverse("act-mend"))
    assert [row.name for row in page.context["form"].rows] == ["Telescoping cover, 10 frames, to mend"]
    answer = send(client, reverse("act-mend"), **{"n__cover-10__to_mend": "2"})
    assert said(answer) == ["Mended 2 pieces at Shed."]
    assert (of(shed, "cover-10"), of(shed, "cover-10", "to mend")) == (2, 1)


def test_more_than_is_to_mend_is_refused_for_good(client, shed):
    makers.put(shed, {"cover-10": 3}, condition="to mend")
    answer = send(client, reverse("act-mend"), **{"n__cover-10__to_mend": "4"})
    assert "4 of telescoping cover, 10 frames (to mend) wanted" in faults(answer)[0]
    assert not answer.context["form"].asks_found


@pytest.mark.parametrize("becomes", ["to mend", "held back"])
def test_gear_is_set_aside(client, shed, becomes):
    answer = send(client, reverse("act-mark"), becomes=becomes, **{"n__box-deep-10__sound": "2"})
    assert said(answer) == [f"Set aside 2 pieces at Shed as {becomes}."]
    assert of(shed, "box-deep-10", becomes) == 2


def test_gear_to_mend_is_not_set_aside_as_to_mend_once_more(client, shed):
    makers.put(shed, {"cover-10": 3}, condition="to mend")
    answer = send(client, reverse("act-mark"), becomes="to mend", **{"n__cover-10__to_mend": "1"})
    assert faults(answer)[0].startswith("telescoping cover, 10 frames, to mend is both ends")


def test_held_back_gear_stays_held_back(client, shed):
    makers.put(shed, {"cover-10": 3}, condition="held back")
    assert "n__cover-10__held" not in client.get(reverse("act-mark")).context["form"].fields
    answer = send(client, reverse("act-mark"), becomes="to mend", **{"n__cover-10__held": "1"})
    assert "is held back and cannot be marked anew" in faults(answer)[0]


@pytest.mark.parametrize(("name", "word"), [("act-scrap", "Scrapped"), ("act-burn", "Burnt")])
def test_gear_goes_for_good_from_a_store_or_a_colony(client, shed, deadout, name, word):
    answer = send(client, f"{reverse(name)}?yard=shed", **{"n__box-deep-10__sound": "2"})
    assert said(answer) == [f"{word} 2 pieces of Shed."]
    answer = send(client, f"{reverse(name)}?colony={deadout.pk}", **{"n__box-deep-10__sound": "2"})
    assert said(answer) == [f"{word} 2 pieces of F-02."]
    assert (of(shed, "box-deep-10"), of(deadout, "box-deep-10")) == (6, 0)


def test_burning_carries_its_cautions(client, shed):
    assert "Caution: disease and fire" in text(client.get(reverse("act-burn")))


def test_more_than_there_is_cannot_be_scrapped(client, shed):
    answer = send(client, reverse("act-scrap"), **{"n__box-deep-10__sound": "9"})
    assert "the book says 8" in faults(answer)[0]


def test_feed_is_used_up_and_only_feed_is_offered(client, shed):
    page = client.get(reverse("act-use"))
    assert [row.part.code for row in page.context["form"].rows] == ["sugar"]
    answer = send(client, reverse("act-use"), n__sugar__sound="20")
    assert said(answer) == ["Used up 20 lb of Shed."]
    assert of(shed, "sugar") == 30
