"""Where did it come from? asked on This week, answered on one page."""

import datetime as dt

import pytest
from django.urls import reverse

from apiary.rights import HELPER
from inventory import counting, ledger, stock
from inventory.gear import Gear
from inventory.ledger import Line
from inventory.models import FoundAnswer
from tests import makers
from tests.inventory.views.sending import faults, said, send, text

pytestmark = pytest.mark.django_db
BOX = Gear(part="box-deep-10")
DAY = dt.date(2025, 6, 10)


@pytest.fixture
def movement(shed, yard):
    """Two deep boxes hauled to the shed from a yard whose book has none."""
    act = ledger.move(
        source=yard,
        target=shed,
        lines=[Line("box-deep-10", 2)],
        day=DAY,
        who=None,
        key=makers.fresh_key(),
        found_allowed=True,
    )
    return act.movements.get(found=True)


def address(movement):
    return reverse("found", args=[movement.pk])


def test_this_week_asks_and_asks_no_more_once_it_is_settled(client, keeper, movement):
    week = client.get(reverse("home"))
    assert "Where did it come from? 1" in text(week) and address(movement) in week.content.decode()
    answer = send(client, address(movement), came="missing", note="never booked")
    assert said(answer) == ["2 × deep box, 10 frames at Fern Hollow: put down as missing from the book."]
    assert "Where did it come from?" not in text(client.get(reverse("home")))
    assert "Answered: it was simply missing from the book, by keeper. never booked" in text(
        client.get(address(movement))
    )


def test_a_dead_hive_that_still_has_them_is_offered_and_booked(client, keeper, movement, deadout):
    page = client.get(address(movement))
    place = f"place:{deadout.place.pk}"
    assert place in [value for value, _ in page.context["form"].fields["came"].choices]
    assert "colony F-02 is no more and the book still has them on it" in text(page)
    send(client, address(movement), came=place)
    assert BOX not in stock.on_hand(deadout)
    assert not counting.unanswered().exists()


def test_an_order_that_still_owes_them_is_offered_and_received(client, keeper, movement):
    order = makers.make_order({makers.make_offer({"box-deep-10": 2}): 1}, placed_on=makers.DAY)
    send(client, address(movement), came=f"order:{order.pk}")
    order.refresh_from_db()
    assert order.status == "received"


def test_what_explains_some_of_the_pieces_is_told_but_not_offered(client, keeper, movement, yard):
    makers.make_dead_colony(tag="F-08", yard=yard)
    nearly = makers.make_dead_colony(tag="F-07", yard=yard)
    makers.put(nearly, {"box-deep-10": 1})
    page = client.get(address(movement))
    assert "colony F-07 is no more" in text(page)
    assert [value for value, _ in page.context["form"].fields["came"].choices] == ["other", "missing"]


def test_a_recipe_whose_parts_the_book_has_there_is_offered_and_booked(client, keeper, shed, yard):
    makers.put(yard, {"frame-medium": 8, "foundation-medium": 9})
    told = {"source": yard, "target": shed, "day": DAY, "who": None, "key": "f", "found_allowed": True}
    act = ledger.move(lines=[Line("frame-medium-foundation", 6)], **told)
    movement = act.movements.get(found=True)
    page = client.get(address(movement))
    assert "Assembled at Fern Hollow and not booked: out of 6 × " in text(page)
    send(client, address(movement), came="recipe:fit-foundation-medium")
    there = stock.on_hand(yard)
    assert (there[Gear(part="frame-medium")], there[Gear(part="foundation-medium")]) == (2, 3)
    assert not counting.unanswered().exists()


def test_another_place_is_named(client, keeper, movement, shed, colony):
    send(client, address(movement), came="other", hive=colony.pk)
    assert BOX not in stock.on_hand(colony)
    assert stock.on_hand(shed)[BOX] == 10


def test_one_place_is_named_not_none_and_not_two(client, keeper, movement, colony):
    for named in ({}, {"store": "shed", "hive": colony.pk}):
        answer = send(client, address(movement), came="other", **named)
        assert answer.status_code == 422
        assert "Name one place: a store or a colony." in text(answer)


def test_a_place_whose_book_has_fewer_is_refused(client, keeper, movement):
    makers.make_yard("mill")
    answer = send(client, address(movement), came="other", store="mill")
    assert answer.status_code == 422
    assert "the book says 0" in faults(answer)[0]
    assert not FoundAnswer.objects.exists()


def test_no_answer_is_no_answer(client, keeper, movement):
    assert send(client, address(movement)).status_code == 422


def test_the_answer_is_undone_and_asked_anew(client, keeper, movement, colony):
    send(client, address(movement), came="other", hive=colony.pk)
    act = FoundAnswer.objects.get().act
    client.post(reverse("books-reverse", args=[act.pk]))
    assert "Where did it come from? 1" in text(client.get(reverse("home")))
    assert "Put the answer down" in text(client.get(address(movement)))


def test_only_found_gear_is_asked_about_and_only_the_keeper(client, keeper, movement, yard, shed):
    other = movement.act.movements.get(found=False)
    assert client.get(address(other)).status_code == 404
    client.force_login(makers.make_person("helper", role=HELPER, yards=[yard, shed]))
    assert client.get(address(movement)).status_code == 403
    assert "Where did it come from?" not in text(client.get(reverse("home")))
