"""Explanations in words, each with the acts that would put it right, filled in."""

import datetime as dt

import pytest
from django.urls import reverse

from apiary.rights import HELPER
from inventory import counting, ledger
from inventory.ledger import Line
from inventory.reconcile import Likely, explain
from inventory.views.explaining import SENTENCES, WAYS, told
from tests import makers
from tests.inventory.views.sending import opened

pytestmark = pytest.mark.django_db
DAY = makers.DAY


def on(days):
    return DAY + dt.timedelta(days=days)


def haul(source, target, number, day=5, part="box-deep-10"):
    told = {"lines": [Line(part, number)], "day": on(day), "who": None, "key": makers.fresh_key()}
    return ledger.move(source=source, target=target, **told)


def draft(place, numbers, day=10):
    count = counting.begin(location=place, day=on(day), who=None, key=makers.fresh_key())
    return counting.enter(count, [(place, part, "sound", n) for part, n in numbers.items()])


def explained(count, user):
    rows = [row.difference for row in counting.compared(count)]
    facts = counting.facts_about(rows, count.day, count=count)
    return {
        one.explanation.likely: one for one in reversed(told(explain(rows, facts), day=count.day, user=user))
    }


def test_every_explanation_has_a_sentence_and_a_way():
    assert set(SENTENCES) == set(WAYS) == set(Likely)


def test_a_haul_not_booked_leads_to_the_haul_with_its_numbers(client, keeper, shed, yard):
    draft(yard, {"box-deep-10": 5}, day=9)
    one = explained(draft(shed, {"box-deep-10": 3}), keeper)[Likely.UNBOOKED]
    assert one.sentence.startswith("5 × deep box, 10 frames: missing at Shed, and as many more")
    ((address, words),) = one.ways
    assert words == "Haul them from Shed to Fern Hollow"
    assert address.startswith(reverse("act-move"))
    values = opened(client, address)
    assert values["n__box-deep-10__sound"] == 5 and values["target"] == "fern-hollow"
    assert values["day"] == on(10).isoformat()


def test_a_load_that_never_came_leads_to_reversing_it(client, keeper, shed, yard):
    act = haul(shed, yard, 5)
    one = explained(draft(yard, {"box-deep-10": 0}), keeper)[Likely.NEVER_CAME]
    assert "booked from Shed to Fern Hollow on 6 April 2025. Perhaps they never came" in one.sentence
    assert one.ways == ((reverse("books-reverse", args=[act.pk]), "Reverse that act"),)


def test_a_load_of_which_some_came_leads_to_the_act_and_the_way_back(client, keeper, shed, yard):
    lines = [Line("box-deep-10", 5), Line("sugar", 10)]
    ledger.move(source=shed, target=yard, lines=lines, day=on(5), who=None, key="m")
    one = explained(draft(yard, {"box-deep-10": 0}), keeper)[Likely.NEVER_CAME]
    assert [words for _, words in one.ways] == [
        "Look at that act",
        "Haul them from Fern Hollow to Shed",
    ]


def test_the_other_way_round_is_reversed_and_hauled_with_half_the_pieces(client, keeper, shed, yard):
    makers.put(yard, {"box-deep-10": 4})
    haul(yard, shed, 4)
    one = explained(draft(shed, {"box-deep-10": 4}), keeper)[Likely.OTHER_WAY]
    reverse_it, haul_it = one.ways
    assert reverse_it[1] == "Reverse that act"
    assert "n__box-deep-10__sound=4" in haul_it[0] and "source=shed" in haul_it[0]


def test_gear_missing_on_a_hive_and_more_in_the_store_is_taken_off(client, keeper, yard, colony):
    makers.put(yard, {"stand": 1})
    count = counting.begin(location=yard, day=on(10), who=None, key="k", with_colonies=True)
    counting.enter(count, [(yard, "box-deep-10", "sound", 1), (colony, "box-deep-10", "sound", 1)])
    one = explained(count, keeper)[Likely.UNBOOKED]
    ((address, words),) = one.ways
    assert words == "Take them off F-01"
    assert opened(client, address)["n__box-deep-10__sound"] == 1


def test_supers_missing_in_flow_lead_to_super_up(client, keeper, yard, colony):
    makers.make_window(yard, first_week=1, last_week=52)
    makers.put(yard, {"box-medium-10": 4, "comb-medium-honey": 40})
    one = explained(draft(yard, {"box-medium-10": 2, "comb-medium-honey": 20}), keeper)[Likely.SUPER_UP]
    assert "In flow and without a super by the book: F-01." in one.sentence
    assert one.ways[0][0].startswith(reverse("act-super-up"))
    assert client.get(one.ways[0][0]).status_code == 200


def test_assembling_not_booked_leads_to_the_bench_with_the_times(client, keeper, shed):
    makers.put(shed, {"box-deep-10-flat": 10})
    count = draft(shed, {"box-deep-10-flat": 4, "box-deep-10": 14})
    one = explained(count, keeper)[Likely.ASSEMBLED]
    assert "assembled 6 times" in one.sentence
    assert opened(client, one.ways[0][0])["times"] == 6


def test_a_receipt_and_a_deadout_lead_to_their_pages(client, keeper, yard, deadout):
    order = makers.make_order({makers.make_offer({"box-deep-10": 2}): 1}, placed_on=DAY)
    found = explained(draft(yard, {"box-deep-10": 2}, day=90), keeper)
    assert found[Likely.RECEIPT].ways[0][0].startswith(reverse("order-receive", args=[order.pk]))
    assert found[Likely.DEADOUT].ways[0][0].startswith(reverse("act-deadout"))
    for likely in (Likely.RECEIPT, Likely.DEADOUT):
        assert client.get(found[likely].ways[0][0]).status_code == 200


def test_a_condition_not_booked_leads_to_setting_aside(client, keeper, shed):
    count = draft(shed, {"box-deep-10": 6})
    counting.enter(count, [(shed, "box-deep-10", "to mend", 2)])
    one = explained(count, keeper)[Likely.MARKED]
    assert one.ways[0][1] == "Set them aside" and client.get(one.ways[0][0]).status_code == 200


def test_a_page_that_is_not_open_to_who_looks_is_not_linked(shed, yard):
    order = makers.make_order({makers.make_offer({"box-deep-10": 2}): 1}, placed_on=DAY)
    haul(shed, yard, 5)
    helper = makers.make_person("helper", role=HELPER, yards=[yard])
    found = explained(draft(yard, {"box-deep-10": 0}), helper)
    assert order.pk and found[Likely.NEVER_CAME].sentence
    names = [address for one in found.values() for address, _ in one.ways]
    assert not any(address.startswith("/orders/") for address in names)
