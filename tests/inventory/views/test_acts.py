"""Haul, place, take off: told in rows, posted once, refused in sentences with nothing lost."""

import datetime as dt

import pytest
from django.urls import reverse
from django.utils import timezone

from inventory import stock
from inventory.gear import Gear
from inventory.models import Act
from tests import makers
from tests.inventory.views.sending import faults, opened, said, send, text

pytestmark = pytest.mark.django_db
MOVE, PLACE, TAKE_OFF = reverse("act-move"), reverse("act-place"), reverse("act-take-off")
DEEP = {"n__box-deep-10__sound": "3"}


def deeps(ground):
    return stock.on_hand(ground).get(Gear(part="box-deep-10"), 0)


def test_a_load_goes_from_the_shed_to_the_yard_of_the_address(client, keeper, shed, yard):
    answer = send(client, f"{MOVE}?yard=fern-hollow", **DEEP, **{"n__comb-medium-honey__sound": "40"})
    assert said(answer) == ["Hauled from Shed: 43 pieces to Fern Hollow."]
    assert (deeps(shed), deeps(yard)) == (5, 3)
    act = Act.objects.get(name="haul")
    assert (act.day, act.who) == (timezone.localdate(), keeper)
    assert answer.redirect_chain == [(reverse("yard", args=["fern-hollow"]), 302)]


def test_a_yard_that_holds_gear_is_loaded_from(client, keeper, shed, yard):
    makers.put(yard, {"box-deep-10": 2})
    page = client.get(f"{MOVE}?yard=fern-hollow")
    assert page.context["form"].rows[0].booked == 2
    answer = send(client, f"{MOVE}?yard=fern-hollow", target="shed", **{"n__box-deep-10__sound": "2"})
    assert said(answer) == ["Hauled from Fern Hollow: 2 pieces to Shed."]


def test_the_act_can_be_undone_where_it_is_told(client, keeper, shed, yard):
    answer = send(client, f"{MOVE}?yard=fern-hollow", **DEEP)
    undo = reverse("books-reverse", args=[Act.objects.get(name="haul").pk])
    assert f'action="{undo}"' in answer.content.decode()
    back = client.post(undo, HTTP_REFERER="http://testserver/yards/fern-hollow/", follow=True)
    assert back.redirect_chain[0][0] == "http://testserver/yards/fern-hollow/"
    assert deeps(shed) == 8
    assert said(back)[0].startswith("Reversed: hauled, of ")


def test_a_form_sent_twice_posts_once(client, keeper, shed, yard):
    fields = {**opened(client, f"{MOVE}?yard=fern-hollow"), **DEEP}
    client.post(f"{MOVE}?yard=fern-hollow", fields)
    again = client.post(f"{MOVE}?yard=fern-hollow", fields, follow=True)
    assert Act.objects.filter(name="haul").count() == 1
    assert said(again)[-1].startswith("This was sent before and is booked once.")


def test_the_key_of_another_act_is_refused(client, keeper, shed, yard, colony):
    fields = opened(client, f"{MOVE}?yard=fern-hollow")
    client.post(f"{MOVE}?yard=fern-hollow", {**fields, **DEEP})
    answer = send(client, f"{PLACE}?colony={colony.pk}&source=shed", key=fields["key"], **DEEP)
    assert answer.status_code == 422
    assert faults(answer)[0].startswith("This form was sent before as another act (haul")


def test_more_than_the_book_has_is_booked_at_once_as_found_and_asked_about_this_week(
    client, keeper, shed, yard
):
    answer = send(client, f"{MOVE}?yard=fern-hollow", **{"n__box-deep-10__sound": "12"})
    assert said(answer) == [
        "Hauled from Shed: 12 pieces to Fern Hollow. 4 pieces beyond the book booked as found."
    ]
    assert (deeps(shed), deeps(yard)) == (0, 12)
    assert "4 × deep box, 10 frames" in text(client.get(reverse("home")))


def test_a_load_to_where_it_comes_from_is_refused(client, keeper, shed, yard):
    answer = send(client, f"{MOVE}?source=shed", target="shed", **DEEP)
    assert faults(answer) == ["Shed is both ends of this move: choose another place to move to."]


def test_nothing_told_is_refused(client, keeper, shed, yard):
    answer = send(client, f"{MOVE}?yard=fern-hollow")
    assert faults(answer) == ["Nothing was given to haul: name at least one part and how many."]


def test_a_wrong_number_is_told_at_its_row_and_the_rest_is_kept(client, keeper, shed, yard):
    answer = send(
        client, f"{MOVE}?yard=fern-hollow", **{"n__box-deep-10__sound": "-2", "n__sugar__sound": "7"}
    )
    assert answer.context["form"].errors["n__box-deep-10__sound"]
    assert 'value="7"' in answer.content.decode()


def test_a_load_without_a_goal_asks_for_it(client, keeper, shed):
    answer = send(client, f"{MOVE}?source=shed", **DEEP)
    assert answer.context["form"].errors["target"] == ["This field is required."]


def test_a_row_is_added_for_what_the_book_does_not_know_here(client, keeper, shed, yard):
    answer = send(client, f"{MOVE}?yard=fern-hollow", add="row", also="excluder-10", **DEEP)
    assert answer.status_code == 200
    assert "n__excluder-10__sound" in answer.context["form"].fields
    assert 'value="3"' in answer.content.decode()
    assert not Act.objects.filter(name="haul").exists()


def test_an_act_of_a_past_day_is_written_on_that_day(client, keeper, shed, yard):
    send(client, f"{MOVE}?yard=fern-hollow&day=2025-05-20", **DEEP)
    assert Act.objects.get(name="haul").day == dt.date(2025, 5, 20)


def test_a_day_to_come_is_told_and_today_taken(client, keeper, shed, yard):
    page = client.get(f"{MOVE}?day=2999-01-01")
    assert "1 January 2999 is still to come" in text(page)
    answer = send(client, MOVE, day="2999-01-01", target="fern-hollow", **DEEP)
    assert faults(answer)[0].startswith("1 January 2999 is still to come")


def test_on_a_day_before_the_gear_came_it_was_found_that_day(client, keeper, shed, yard):
    answer = send(client, f"{MOVE}?yard=fern-hollow&source=shed&day=2024-05-20", **DEEP)
    assert said(answer)[0].endswith("beyond the book booked as found.")
    assert (deeps(shed), deeps(yard)) == (8, 3)


def test_gear_is_placed_on_the_colony_of_the_address(client, keeper, shed, colony):
    answer = send(client, f"{PLACE}?colony={colony.pk}", **DEEP)
    assert said(answer) == ["Placed 3 pieces from Shed to F-01."]
    assert deeps(colony) == 2 + 3
    assert answer.redirect_chain == [(reverse("colony", args=[colony.pk]), 302)]


def test_a_yard_lets_one_choose_a_living_colony(client, keeper, shed, colony, deadout):
    page = client.get(f"{PLACE}?yard=fern-hollow")
    assert "F-01" in text(page) and "F-02" not in text(page)
    assert f"?colony={colony.pk}&amp;day=" in page.content.decode()


def test_what_does_not_fit_is_left_out_with_the_reason(client, keeper, shed, colony):
    page = client.get(f"{PLACE}?colony={colony.pk}")
    assert [row.part.code for row in page.context["form"].rows] == ["box-deep-10", "comb-medium-honey"]
    assert "it is 8 frames wide and the hive takes 10" in text(page)


@pytest.mark.parametrize(
    ("field", "sentence"),
    [
        ("n__box-deep-8__sound", "deep box, 8 frames does not fit colony F-01"),
        ("n__sugar__sound", "white sugar cannot stand on colony F-01: feed is used up"),
        ("n__box-deep-10__held", "deep box, 10 frames is held back and cannot be placed at F-01"),
    ],
)
def test_a_piece_that_may_not_go_on_a_hive_is_refused(client, keeper, shed, colony, field, sentence):
    answer = send(client, f"{PLACE}?colony={colony.pk}", **{field: "1"})
    assert faults(answer)[0].startswith(sentence)


def test_a_dead_colony_takes_no_gear(client, keeper, shed, deadout):
    answer = send(client, f"{PLACE}?colony={deadout.pk}", **DEEP)
    assert faults(answer)[0].startswith("Colony F-02 ended on 1 June 2025")


def test_gear_is_taken_off_into_the_store_of_the_yard(client, keeper, shed, colony, yard):
    answer = send(client, f"{TAKE_OFF}?colony={colony.pk}", **{"n__box-deep-10__sound": "1"})
    assert said(answer) == ["Took 1 piece from F-01 to Fern Hollow."]
    assert (deeps(colony), deeps(yard)) == (1, 1)


def test_nothing_is_taken_off_a_deadout(client, keeper, shed, deadout):
    answer = send(client, f"{TAKE_OFF}?colony={deadout.pk}", **{"n__box-deep-10__sound": "1"})
    assert faults(answer)[0].startswith("Colony F-02 ended on 1 June 2025")


def test_nothing_is_taken_off_before_the_colony_started(client, keeper, shed, colony):
    address = f"{TAKE_OFF}?colony={colony.pk}&day=2025-03-01"
    answer = send(client, address, **{"n__box-deep-10__sound": "1"})
    assert faults(answer)[0].startswith("Colony F-01 started on 1 April 2025")


def test_without_a_yard_an_act_leads_to_the_sheet(client, keeper):
    answer = client.get(MOVE, follow=True)
    assert said(answer) == ["No yard is in the books yet: load your sheet first."]


def test_a_load_from_a_yard_goes_home_unless_told_otherwise(client, keeper, shed, yard):
    makers.put(yard, {"box-deep-10": 2})
    assert opened(client, f"{MOVE}?yard=fern-hollow")["target"] == "shed"
    assert opened(client, f"{MOVE}?source=fern-hollow")["target"] == "shed"
    assert "target" not in opened(client, f"{MOVE}?source=shed")
