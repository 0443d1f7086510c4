"""One load for several yards: weighed and measured against the truck, over the limit only with a tick, never blocked."""

import pytest
from django.urls import reverse

from inventory import stock
from inventory.gear import Gear
from inventory.models import Act
from tests import makers
from tests.inventory.views.sending import faults, opened, said, send, text

pytestmark = pytest.mark.django_db
HAUL = reverse("act-move")
TWO = f"{HAUL}?source=shed&stops=fern-hollow&stops=long-acre"


@pytest.fixture
def other(db):
    return makers.make_yard("long-acre")


def deeps(ground):
    return stock.on_hand(ground).get(Gear(part="box-deep-10"), 0)


def weighed(answer):
    return answer.context["form"].weighed


def test_one_load_is_dropped_at_two_yards_by_one_act(client, keeper, shed, yard, other):
    page = client.get(TWO)
    assert "Fern Hollow, Long Acre" in text(page)
    boxes = {"n__fern-hollow@box-deep-10__sound": "3", "n__long-acre@box-deep-10__sound": "2"}
    answer = send(client, TWO, **boxes, **{"n__long-acre@comb-medium-honey__sound": "20"})
    assert said(answer) == ["Hauled from Shed: 3 pieces to Fern Hollow, 22 pieces to Long Acre."]
    assert (deeps(shed), deeps(yard), deeps(other)) == (3, 3, 2)


def test_the_stops_stay_chosen_and_a_row_is_added_for_each(client, keeper, shed, yard, other):
    answer = send(client, TWO, add="row", also="excluder-10", **{"n__fern-hollow@box-deep-10__sound": "3"})
    form = answer.context["form"]
    assert {"n__fern-hollow@excluder-10__sound", "n__long-acre@excluder-10__sound"} <= set(form.fields)
    assert 'value="3"' in answer.content.decode()
    assert answer.content.decode().count(" checked") == 2


def test_the_stop_a_load_comes_from_is_refused(client, keeper, shed, yard):
    address = f"{HAUL}?source=shed&stops=shed&stops=fern-hollow"
    answer = send(client, address, **{"n__shed@box-deep-10__sound": "1"})
    assert faults(answer) == ["Shed is both ends of this move: choose another place to move to."]


def test_one_stop_is_the_goal(client, keeper, shed, yard):
    assert opened(client, f"{HAUL}?source=shed&stops=fern-hollow")["target"] == "fern-hollow"


def test_a_wrong_word_for_a_stop_is_told(client, keeper, shed, yard):
    page = client.get(f"{HAUL}?source=shed&stops=nowhere")
    assert page.status_code == 200
    assert "nowhere is not one of the available choices" in text(page)


def test_weight_and_room_are_told_beside_the_truck(client, keeper, shed, yard):
    """Eight deeps of 7.23 lb are 57.84 lb, in whole pounds 58; their outside is 14.4 cubic feet, 15.8 with a tenth."""
    answer = send(client, f"{HAUL}?source=shed", add="row", **{"n__box-deep-10__sound": "8"})
    weight, room = weighed(answer).lines
    assert (weight.amount, weight.limit_amount, weight.over) == (58, 500, False)
    assert (room.amount, room.limit_amount, room.unit, room.over) == (16, 50, "cubic ft", False)
    assert "58 lb of 500" in text(answer)


def test_over_the_limit_it_is_said_before_posting_with_the_trips_and_goes_with_a_tick(
    client, keeper, shed, yard
):
    many = {"n__box-deep-10__sound": "60"}
    answer = send(client, f"{HAUL}?source=shed", target="fern-hollow", **many)
    assert answer.status_code == 422
    words = "This load is 119 cubic ft where your truck takes 50: that is 3 trips."
    assert words in answer.context["form"].errors["over"][0]
    assert words in text(answer)
    assert not Act.objects.filter(name="haul").exists()
    answer = send(client, f"{HAUL}?source=shed", target="fern-hollow", over="on", **many)
    assert said(answer)[0].startswith("Hauled from Shed: 60 pieces to Fern Hollow.")
    assert deeps(yard) == 60


def test_boxes_full_of_honey_weigh_more(client, keeper, shed, yard):
    """A full deep weighs 90 lb at most with box and combs (extension teaching, from memory)."""
    full = {"n__box-deep-10__sound": "8", "full__box-deep-10__sound": "8"}
    answer = send(client, f"{HAUL}?source=shed", target="fern-hollow", **full)
    load = weighed(answer).load
    combs = 8 * 10 * makers.part("comb-deep-honey").tare_lb
    assert load.lb + combs == 8 * 90
    assert "where your truck takes 500: that is 2 trips." in answer.context["form"].errors["over"][0]


def test_more_full_boxes_than_boxes_is_refused(client, keeper, shed, yard):
    full = {"n__box-deep-10__sound": "1", "full__box-deep-10__sound": "2"}
    answer = send(client, f"{HAUL}?source=shed", target="fern-hollow", **full)
    told = answer.context["form"].errors["full__box-deep-10__sound"]
    assert told == ["2 full of honey, but 1 of them are on the load."]


def test_lifting_and_load_securing_are_cautioned_and_held_gear_too(client, keeper, shed, yard):
    words = text(client.get(f"{HAUL}?source=shed"))
    assert "Caution: lifting" in words and "Strap every stack across and along" in words
    assert "Held-back gear on the road" not in words
    makers.put(shed, {"box-deep-10": 1}, condition="held back")
    assert "Held-back gear on the road" in text(client.get(f"{HAUL}?source=shed"))


def test_what_is_typed_is_no_number_is_told_at_its_row(client, keeper, shed, yard, other):
    answer = send(client, TWO, **{"n__long-acre@box-deep-10__sound": "many"})
    assert answer.context["form"].errors["n__long-acre@box-deep-10__sound"] == ["Enter a whole number."]
