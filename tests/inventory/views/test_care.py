"""Assemble, mend, set aside, scrap, burn and use through their pages."""

import pytest
from django.urls import reverse

from inventory import stock
from inventory.gear import Condition, Gear
from inventory.models import Act
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


def test_more_than_there_is_by_the_book_is_assembled_and_the_rest_found(client, shed):
    makers.put(shed, {"box-medium-10-flat": 6})
    address = f"{reverse('act-assemble')}?yard=shed&recipe=assemble-box-medium-10"
    answer = send(client, address, times="7")
    assert said(answer)[0].endswith("1 piece beyond the book booked as found.")
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


def test_more_than_is_to_mend_by_the_book_is_mended_and_the_rest_found(client, shed):
    makers.put(shed, {"cover-10": 3}, condition="to mend")
    answer = send(client, reverse("act-mend"), **{"n__cover-10__to_mend": "4"})
    assert said(answer) == ["Mended 4 pieces at Shed. 1 piece beyond the book booked as found."]


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
    why = {"why": "worn out"} if name == "act-scrap" else {}
    answer = send(client, f"{reverse(name)}?yard=shed", **why, **{"n__box-deep-10__sound": "2"})
    assert said(answer) == [f"{word} 2 pieces of Shed."]
    answer = send(client, f"{reverse(name)}?colony={deadout.pk}", **why, **{"n__box-deep-10__sound": "2"})
    assert said(answer) == [f"{word} 2 pieces of F-02."]
    assert (of(shed, "box-deep-10"), of(deadout, "box-deep-10")) == (6, 0)


def test_burning_carries_its_cautions(client, shed):
    words = text(client.get(reverse("act-burn")))
    assert (
        "Caution: disease and fire" in words
        and "want a permit" in words
        and "inspector and local rules" in words
    )


def test_more_than_there_is_by_the_book_is_scrapped_and_the_rest_found(client, shed):
    nine = {"why": "worn out", "n__box-deep-10__sound": "9"}
    answer = send(client, reverse("act-scrap"), **nine)
    assert said(answer) == ["Scrapped 9 pieces of Shed. 1 piece beyond the book booked as found."]


def test_why_gear_is_scrapped_must_be_told_and_stands_in_the_note(client, shed):
    two = {"n__box-deep-10__sound": "2"}
    answer = send(client, reverse("act-scrap"), **two)
    assert answer.context["form"].errors["why"] == ["This field is required."]
    assert send(client, reverse("act-scrap"), why="a whim", **two).context["form"].errors["why"]
    assert (
        send(client, reverse("act-scrap"), why="worn out", note="x" * 171, **two)
        .context["form"]
        .errors["note"]
    )
    send(client, reverse("act-scrap"), why="wax moth or mice", note="east wall", **two)
    assert Act.objects.get(name="scrap").note == "wax moth or mice; east wall"


def test_feed_is_used_up_and_only_feed_is_offered(client, shed):
    page = client.get(reverse("act-use"))
    assert [row.part.code for row in page.context["form"].rows] == ["sugar"]
    answer = send(client, reverse("act-use"), n__sugar__sound="20")
    assert said(answer) == ["Used up 20 lb of Shed."]
    assert of(shed, "sugar") == 30
