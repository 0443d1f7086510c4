"""Sheets of acts on bees: told with few presses, posted once, refused in sentences with nothing lost."""

import datetime as dt

import pytest
from django.urls import reverse
from django.utils import timezone

from apiary.models import Access, Colony
from apiary.queens import queen_of
from inventory.models import Act
from inventory.stock import found_gear, on_hand
from tests import makers
from tests.inventory.views.sending import faults, opened, said, send, text

pytestmark = pytest.mark.django_db


def page(name, *, yard=None, colony=None):
    asked = f"colony={colony.pk}" if colony else f"yard={yard.code}"
    return f"{reverse(name)}?{asked}"


def gear(ground):
    return {piece.part: number for piece, number in on_hand(ground).items()}


@pytest.fixture
def hives(yard):
    strengths = (("F-01", "fair"), ("F-02", "strong"), ("F-03", "weak"))
    return [makers.make_colony(tag, yard=yard, gear=True, strength=word) for tag, word in strengths]


@pytest.fixture
def stocked_yard(yard):
    makers.put(yard, {"box-deep-10": 4, "floor-10": 4, "inner-cover-10": 4, "cover-10": 4})
    makers.put(yard, {"frame-deep-foundation": 60, "nuc-box-5": 2})
    return yard


def test_a_split_from_the_colony_s_page_needs_nothing_but_a_press(client, keeper, stocked_yard, colony):
    answer = send(client, page("act-split", colony=colony))
    assert said(answer) == ["Split F-01: F-02 started with 5 combs, 14 pieces from the store of Fern Hollow."]
    daughter = Colony.objects.get(tag="F-02")
    assert (daughter.mother, daughter.hive_set.code, daughter.started_on) == (
        colony,
        "one-deep-10",
        timezone.localdate(),
    )
    assert answer.redirect_chain == [(reverse("colony", args=[colony.pk]), 302)]


def test_two_of_three_in_a_yard_are_split_as_told(client, keeper, stocked_yard, hives):
    numbers = {f"n__{hives[1].pk}": "2", f"n__{hives[0].pk}": "1"}
    choices = {"hive_set": "nuc-5", "frames": "4", "queen": "cell", "tags": "F-21, Ruby"}
    send(client, page("act-split", yard=stocked_yard), **numbers, **choices)
    born = Colony.objects.exclude(mother=None).order_by("pk")
    assert [(one.tag, one.mother.tag) for one in born] == [
        ("F-21", "F-01"),
        ("Ruby", "F-02"),
        ("Ruby-2", "F-02"),
    ]
    assert queen_of(born[0]).words == "a queen cell given"
    assert Act.objects.filter(name="split").count() == 1
    assert {row.part.code: row.quantity for row in found_gear()} == {"nuc-box-5": 1}


def test_the_strongest_stand_first_for_the_one_number_of_the_yard(client, keeper, stocked_yard, hives):
    form = client.get(page("act-split", yard=stocked_yard)).context["form"]
    assert {row.colony.tag: row.rank for row in form.rows} == {"F-02": 0, "F-01": 1, "F-03": 2}
    assert form.tally == 0


def test_a_split_sent_twice_is_booked_once_and_can_be_undone(client, keeper, stocked_yard, colony):
    address = page("act-split", colony=colony)
    fields = opened(client, address)
    client.post(address, fields)
    again = client.post(address, fields, follow=True)
    assert said(again)[-1].startswith("This was sent before and is booked once.")
    act = Act.objects.get(name="split")
    undo = reverse("books-reverse", args=[act.pk])
    assert f'action="{undo}"' in again.content.decode()
    client.post(undo)
    assert Colony.objects.alive(on=timezone.localdate()).get() == colony


@pytest.mark.parametrize(
    ("changed", "field", "words"),
    [
        ({"tags": "F-01"}, None, "There is a colony F-01 already"),
        ({"tags": ""}, "tags", "This field is required"),
        ({"tags": "A, B"}, "tags", "2 tags for 1 splits"),
        ({"frames": "11"}, None, "11 deep frames do not go into one deep"),
        ({"hive_set": "no-such"}, "hive_set", "Select a valid choice"),
        ({"fill": "honey"}, "fill", "Select a valid choice"),
    ],
)
def test_a_split_that_makes_no_sense_says_so_and_books_nothing(
    client, keeper, stocked_yard, colony, changed, field, words
):
    answer = send(client, page("act-split", colony=colony), **changed)
    assert answer.status_code == 422
    told = answer.context["form"].errors["__all__" if field is None else field]
    assert words in told[0]
    assert Colony.objects.count() == 1


def test_no_number_at_all_is_asked_for(client, keeper, stocked_yard, hives):
    answer = send(client, page("act-split", yard=stocked_yard))
    assert faults(answer) == ["No split was told: give at least one colony a number."]
    answer = send(client, page("act-split", yard=stocked_yard), **{f"n__{hives[0].pk}": "10"})
    assert "less than or equal to 9" in text(answer)


def test_a_dead_colony_is_not_split(client, keeper, stocked_yard, deadout):
    answer = send(client, page("act-split", colony=deadout))
    assert "Colony F-02 ended on 1 June 2025" in faults(answer)[0]


def test_a_day_to_come_in_the_address_is_told(client, keeper, colony):
    answer = client.get(page("act-split", colony=colony) + "&day=2999-01-01")
    assert "is still to come" in text(answer)


def test_a_nuc_is_hived(client, keeper, stocked_yard):
    nuc = makers.make_colony("N-1", yard=stocked_yard, hive_set="nuc-5", gear=True)
    answer = send(client, page("act-hive", colony=nuc), hive_set="one-deep-10")
    nuc.refresh_from_db()
    assert nuc.hive_set.code == "one-deep-10"
    assert gear(stocked_yard)["nuc-box-5"] == 3
    assert said(answer)[0].startswith("N-1 hived")


def test_only_nucs_are_offered_to_be_hived(client, keeper, stocked_yard, colony):
    makers.make_colony("N-1", yard=stocked_yard, hive_set="nuc-5")
    shown = client.get(page("act-hive", yard=stocked_yard)).context["colonies"]
    assert [one.tag for one in shown] == ["N-1"]
    answer = send(client, page("act-hive", colony=colony))
    assert faults(answer) == [
        "Colony F-01 stands in two deeps, 10 frames, not in a nuc box: there is nothing to hive."
    ]


def test_two_colonies_are_united_with_the_boxes_on_top(client, keeper, yard, hives):
    weak, strong = hives[2], hives[1]
    answer = send(client, page("act-unite", colony=weak), onto=str(strong.pk))
    weak.refresh_from_db()
    assert weak.ended_why == "united"
    assert gear(strong)["box-deep-10"] == 4
    assert gear(yard) == {"cover-10": 1, "floor-10": 1, "inner-cover-10": 1}
    assert said(answer) == ["F-03 united with F-02, 22 pieces on it, 3 pieces to the store of Fern Hollow."]


def test_boxes_of_another_width_are_not_offered_to_go_on(client, keeper, yard, hives):
    eight = makers.make_colony("E-1", yard=yard, hive_set="one-deep-8", gear=True)
    form = client.get(page("act-unite", colony=eight)).context["form"]
    assert form["n__box-deep-8__sound"].value() == 0
    answer = send(
        client, page("act-unite", colony=eight), onto=str(hives[0].pk), **{"n__box-deep-8__sound": "1"}
    )
    assert "it is 8 frames wide and the hive takes 10" in faults(answer)[0]


def test_the_other_colony_must_be_chosen_and_stand_in_the_yard(client, keeper, hives):
    answer = send(client, page("act-unite", colony=hives[0]))
    assert answer.context["form"].errors["onto"] == ["Press the tag of the colony it goes to."]
    far = makers.make_colony("X-1")
    answer = send(client, page("act-unite", colony=hives[0]), onto=str(far.pk))
    assert answer.status_code == 422


def test_a_colony_alone_in_its_yard_has_none_to_be_united_with(client, keeper, colony):
    assert "No other colony is alive in this yard" in text(client.get(page("act-unite", colony=colony)))


def test_some_of_a_yard_are_requeened(client, keeper, yard, hives):
    pressed = [str(hives[0].pk), str(hives[2].pk)]
    answer = send(client, page("act-requeen", yard=yard), colonies=pressed, queen="mated", note="row 2")
    assert said(answer) == ["F-01 and F-03: a mated queen of our own."]
    assert queen_of(hives[2]).words == "a mated queen of our own: row 2"
    assert queen_of(hives[1]) is None


def test_the_colony_one_comes_from_is_pressed(client, keeper, hives):
    form = client.get(page("act-requeen", colony=hives[1])).context["form"]
    assert [choice.colony.tag for choice in form.choices if choice.chosen] == ["F-02"]
    answer = send(client, page("act-requeen", yard=hives[0].yard))
    assert answer.context["form"].errors["colonies"][0].startswith("Press the tag of each colony")


def test_a_whole_yard_moves_but_for_one(client, keeper, yard, hives):
    hill = makers.make_yard("long-acre")
    address = page("act-move-colonies", yard=yard)
    answer = send(client, address, colonies=[str(hives[0].pk), str(hives[1].pk)], target="long-acre")
    assert said(answer) == ["Moved F-01 and F-02 to Long Acre, with their gear on them."]
    assert [colony.yard for colony in Colony.objects.order_by("tag")] == [hill, hill, yard]


def test_the_weight_stands_beside_the_truck(client, keeper, yard, hives):
    makers.make_yard("long-acre")
    answer = client.get(page("act-move-colonies", yard=yard))
    form = answer.context["form"]
    assert (form.empty_lb, form.full_lb) == (150, 3 * 202)
    assert answer.context["truck"].lb == 500
    assert "more than the truck takes" in text(answer)
    assert "Caution: stings on the road" in text(answer)


def test_the_yard_they_stand_in_is_not_offered(client, keeper, yard, hives):
    answer = send(client, page("act-move-colonies", yard=yard), target=yard.code)
    assert answer.status_code == 422
    assert "target" in answer.context["form"].errors


def test_a_flooded_yard_is_written_off_with_what_was_saved(client, keeper, shed, stocked_yard, hives):
    saved = {"n__box-deep-10__sound": "2", "store_too": "on"}
    answer = send(client, page("act-lose-yard", yard=stocked_yard), **saved)
    assert said(answer)[0].startswith("F-01, F-02 and F-03 written down as lost")
    assert not Colony.objects.alive(on=timezone.localdate()).exists()
    assert gear(stocked_yard) == {}
    kept = {(piece.part, str(piece.condition)): number for piece, number in on_hand(shed).items()}
    assert kept["box-deep-10", "to mend"] == 2


def test_after_a_bear_the_hives_wait_to_be_worked(client, keeper, shed, yard, hives):
    told = {"cause": "bear", "why": "died", "gear": "stands", "colonies": [str(hives[0].pk)]}
    send(client, page("act-lose-yard", yard=yard), **told)
    hives[0].refresh_from_db()
    assert (hives[0].ended_why, gear(hives[0])) == ("died", makers.gear_of("two-deeps-10"))


def test_a_lost_yard_with_nothing_chosen_is_refused(client, keeper, shed, yard, hives):
    answer = send(client, page("act-lose-yard", yard=yard), colonies=None)
    assert faults(answer) == ["No colony was chosen to write off: choose at least one."]


def test_acts_are_told_late_for_an_earlier_day(client, keeper, stocked_yard, colony):
    send(client, page("act-split", colony=colony) + "&day=2025-05-20")
    assert Colony.objects.get(tag="F-02").started_on == dt.date(2025, 5, 20)


def test_two_taps_lead_to_each_act(client, keeper, yard, hives):
    html = client.get(reverse("yard", args=[yard.code])).content.decode()
    names = ("split", "requeen", "unite", "hive", "sell", "move-colonies", "lose-yard")
    assert [name for name in names if page(f"act-{name}", yard=yard) not in html] == []
    html = client.get(reverse("colony", args=[hives[0].pk])).content.decode()
    names = ("split", "requeen", "unite", "sell", "move-colonies")
    assert [name for name in names if page(f"act-{name}", colony=hives[0]) not in html] == []
    assert page("act-hive", colony=hives[0]) not in html


@pytest.mark.parametrize("name", ["act-split", "act-unite", "act-requeen", "act-move-colonies"])
def test_every_act_on_bees_carries_its_caution(client, keeper, colony, name):
    assert "Caution: stings" in text(client.get(page(name, colony=colony)))


def test_a_helper_splits_in_their_yard_and_nowhere_else(client, stocked_yard, colony):
    far = makers.make_colony("X-1", yard=makers.make_yard("far"), gear=True)
    helper = makers.make_person("helper", role=Access.Role.HELPER, yards=[stocked_yard])
    client.force_login(helper)
    assert client.get(page("act-split", colony=far)).status_code == 403
    send(client, page("act-split", colony=colony))
    assert Colony.objects.get(tag="F-02").mother == colony
    assert client.get(page("act-lose-yard", yard=stocked_yard)).status_code == 403
