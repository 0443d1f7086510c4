"""The hive of a colony that is no more: written down, taken apart, every comb held back until the brood was seen."""

import datetime as dt

import pytest
from django.urls import reverse

from apiary import colonies
from apiary.models import Colony
from inventory import stock
from inventory.gear import Condition, Gear
from inventory.models import Act, Movement
from tests import makers
from tests.inventory.views.sending import faults, said, send, text

pytestmark = pytest.mark.django_db
SALVAGE = reverse("act-salvage")
BOX, COMB = "box-deep-10__sound", "comb-deep-brood__sound"


@pytest.fixture(autouse=True)
def signed_in(keeper):
    return keeper


@pytest.fixture
def deadout(yard):
    """F-02, lost to a flood; its hive came back."""
    return makers.make_dead_colony(tag="F-02", yard=yard, gear=True, why="lost")


def gear_in(ground, condition):
    return {gear.part: n for gear, n in stock.on_hand(ground).items() if gear.condition == condition}


def test_a_dead_colony_is_worked_as_a_deadout_instead(client, shed, yard):
    dead = makers.make_dead_colony(tag="F-05", yard=yard, gear=True)
    answer = client.get(f"{SALVAGE}?colony={dead.pk}&day=2025-06-03")
    assert answer.url == f"{reverse('act-deadout')}?colony={dead.pk}&day=2025-06-03"


def test_only_ended_hives_with_gear_are_offered(client, colony, deadout):
    page = client.get(SALVAGE)
    assert "F-02" in text(page) and "F-01" not in text(page)


def test_the_brood_must_be_spoken_of(client, shed, deadout):
    answer = send(client, f"{SALVAGE}?colony={deadout.pk}")
    assert answer.status_code == 422
    assert answer.context["form"].errors["looked"] == ["This field is required."]


def test_a_clean_hive_goes_to_the_store_where_its_rows_say(client, shed, deadout):
    before = stock.on_hand(shed)
    answer = send(
        client,
        f"{SALVAGE}?colony={deadout.pk}",
        looked="clean",
        **{
            "becomes__floor-10__sound": "to_mend",
            "becomes__cover-10__sound": "scrapped",
            f"n__{BOX}": "1",
        },
    )
    assert answer.redirect_chain == [(reverse("yard", args=["fern-hollow"]), 302)]
    assert said(answer)[0].startswith("Salvaged F-02: ")
    assert stock.on_hand(deadout) == {}
    assert gear_in(shed, Condition.SOUND)["box-deep-10"] == before[Gear(part="box-deep-10")] + 1
    assert gear_in(shed, Condition.TO_MEND) == {"floor-10": 1}
    gone = Movement.objects.filter(act__name="salvage", target__kind__in=["scrap", "lost"])
    assert sorted(gone.values_list("part__code", "target__kind", "quantity")) == [
        ("box-deep-10", "lost", 1),
        ("cover-10", "scrap", 1),
    ]


def make_deadout_with_comb(yard):
    colony = makers.make_colony("F-07", yard=yard)
    makers.put(colony, {"box-deep-10": 2, "comb-deep-brood": 20, "floor-10": 1})
    return colonies.end(colony, why="lost", day=dt.date(2025, 6, 1), who=None)


def test_a_brood_nobody_looked_at_holds_every_comb_back(client, shed, yard):
    deadout = make_deadout_with_comb(yard)
    send(client, f"{SALVAGE}?colony={deadout.pk}", looked="no", **{f"becomes__{COMB}": "sound"})
    assert gear_in(shed, Condition.HELD) == {"comb-deep-brood": 20}
    assert "comb-deep-brood" not in gear_in(shed, Condition.SOUND)
    assert gear_in(shed, Condition.SOUND)["floor-10"] == 1


def test_suspected_foulbrood_holds_all_of_it_back(client, shed, yard):
    deadout = make_deadout_with_comb(yard)
    sound = gear_in(shed, Condition.SOUND)
    send(client, f"{SALVAGE}?colony={deadout.pk}", looked="suspected")
    assert gear_in(shed, Condition.SOUND) == sound
    assert gear_in(shed, Condition.HELD) == {"box-deep-10": 2, "comb-deep-brood": 20, "floor-10": 1}


def test_suspected_foulbrood_may_be_burnt_at_once(client, shed, yard):
    deadout = make_deadout_with_comb(yard)
    send(client, f"{SALVAGE}?colony={deadout.pk}", looked="suspected", **{f"burnt__{COMB}": "20"})
    assert gear_in(shed, Condition.HELD) == {"box-deep-10": 2, "floor-10": 1}
    assert Movement.objects.get(target__kind="burnt").quantity == 20


def test_some_of_a_row_may_go_elsewhere(client, shed, yard):
    deadout = make_deadout_with_comb(yard)
    changed = {f"scrapped__{COMB}": "4", f"held__{COMB}": "6", f"n__{COMB}": "18"}
    send(client, f"{SALVAGE}?colony={deadout.pk}", looked="clean", **changed)
    assert gear_in(shed, Condition.SOUND)["comb-deep-brood"] == 8
    assert gear_in(shed, Condition.HELD)["comb-deep-brood"] == 6
    gone = Movement.objects.filter(part__code="comb-deep-brood", target__kind__in=["scrap", "lost"])
    assert dict(gone.values_list("target__kind", "quantity")) == {"scrap": 4, "lost": 2}


def test_more_elsewhere_than_were_there_is_refused(client, shed, yard):
    deadout = make_deadout_with_comb(yard)
    answer = send(client, f"{SALVAGE}?colony={deadout.pk}", looked="clean", **{f"scrapped__{BOX}": "3"})
    assert answer.context["form"].errors[f"n__{BOX}"] == [
        "2 were there, but 3 are sent elsewhere: count them once more."
    ]


def test_more_than_booked_is_salvaged_and_the_rest_found(client, shed, yard):
    deadout = make_deadout_with_comb(yard)
    answer = send(client, f"{SALVAGE}?colony={deadout.pk}", looked="clean", **{f"n__{BOX}": "3"})
    assert "1 piece beyond the book booked as found." in said(answer)[0]


def test_a_day_before_the_end_is_refused(client, shed, deadout):
    answer = send(client, f"{SALVAGE}?colony={deadout.pk}&day=2025-05-01", looked="clean")
    assert faults(answer)[0].startswith("Colony F-02 had not ended on 1 May 2025")


def test_a_living_colony_is_first_written_down_as_ended(client, shed, colony):
    page = client.get(f"{SALVAGE}?colony={colony.pk}")
    assert page.url == reverse("act-end", args=[colony.pk])
    answer = send(client, page.url, why="died", note="no bees left")
    colony.refresh_from_db()
    assert colony.ended_why == Colony.Ended.DIED
    assert answer.redirect_chain[0][0].startswith(f"{reverse('act-deadout')}?colony={colony.pk}")
    assert said(answer) == ["F-01 written down as found dead."]


def test_an_end_entered_by_mistake_is_undone_from_its_message(client, shed, colony):
    send(client, reverse("act-end", args=[colony.pk]), why="lost", note="wrong tag")
    act = Act.objects.get(name="end")
    client.post(reverse("books-reverse", args=[act.pk]))
    colony.refresh_from_db()
    assert (colony.ended_on, colony.ended_why) == (None, "")


def test_a_colony_ends_once(client, shed, deadout):
    answer = send(client, reverse("act-end", args=[deadout.pk]), why="died")
    assert answer.status_code == 422
    assert "Colony F-02 ended on 1 June 2025" in text(answer)
    deadout.refresh_from_db()
    assert deadout.ended_why == Colony.Ended.LOST
    assert not Act.objects.filter(name="salvage").exists()
