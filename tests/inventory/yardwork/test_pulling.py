"""Supers come off: what the book says they hold, what it does not, and what the bees drew meanwhile."""

import datetime as dt

import pytest

from inventory.errors import ColonyEnded, DoesNotFit, NoBoxFits, NotEnough, NothingGiven, Several
from inventory.gear import Gear
from inventory.models import Part
from inventory.stock import on_hand
from inventory.yardwork import undo
from inventory.yardwork.boxes import super_up
from inventory.yardwork.boxsets import super_of, supers
from inventory.yardwork.hives import sound_gear_on
from inventory.yardwork.pulling import coming_off, kind_on, pull, supers_on
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY
MAY, JULY = dt.date(2025, 5, 1), dt.date(2025, 7, 10)
MEDIUM = ("box-medium-10", "comb-medium-honey", "frame-medium-foundation")


@pytest.fixture
def creek(db):
    return makers.make_yard("creek")


@pytest.fixture
def shed(db):
    return makers.make_shed()


def make_hive(creek, tag="A1", hive_set="two-deeps-10", **gear):
    colony = makers.make_colony(tag, yard=creek, hive_set=hive_set, gear=True)
    if gear:
        makers.put(colony, {code.replace("_", "-"): number for code, number in gear.items()})
    return colony


def off(colonies, target, *, day=JULY, key=None, **fields):
    return pull(colonies=colonies, target=target, day=day, who=None, key=key or makers.fresh_key(), **fields)


def has(ground, *codes):
    gear = on_hand(ground)
    return tuple(gear.get(Gear(part=code), 0) for code in codes)


def test_all_supers_come_off_with_their_combs(creek, shed):
    hive = make_hive(creek, box_medium_10=2, comb_medium_honey=18)
    act = off({hive: 2}, shed)
    assert (act.name, act.day) == ("pull", JULY)
    assert has(shed, *MEDIUM) == (2, 18, 0)
    assert has(hive, *MEDIUM, "box-deep-10", "comb-deep-brood") == (0, 0, 0, 2, 20)


def test_one_of_two_supers_takes_its_share_drawn_comb_first(creek, shed):
    hive = make_hive(creek, box_medium_10=2, comb_medium_honey=10, frame_medium_foundation=10)
    off({hive: 1}, shed)
    assert has(shed, *MEDIUM) == (1, 10, 0)
    assert has(hive, *MEDIUM) == (1, 0, 10)


def test_foundation_comes_back_as_the_comb_it_became(creek, shed):
    hive = make_hive(creek, box_medium_10=1, frame_medium_foundation=10)
    act = off({hive: 1}, shed)
    assert has(shed, *MEDIUM) == (1, 10, 0)
    assert {row.reason for row in act.movements.all()} == {"drawn by bees", "taken off a colony"}
    undo(act, who=None, key="back")
    assert has(hive, *MEDIUM) == (1, 0, 10)


def test_foundation_the_bees_left_alone_comes_back_as_it_went(creek, shed):
    hive = make_hive(creek, box_medium_10=1, frame_medium_foundation=10)
    off({hive: 1}, shed, drawn=False)
    assert has(shed, *MEDIUM) == (1, 0, 10)


def test_the_brood_boxes_of_an_all_medium_hive_stay_on_it(creek, shed):
    hive = make_hive(creek, hive_set="three-mediums-10", box_medium_10=1, comb_medium_honey=9)
    off({hive: 1}, shed)
    assert has(shed, *MEDIUM, "comb-medium-brood") == (1, 9, 0, 0)
    assert has(hive, "box-medium-10", "comb-medium-brood") == (3, 30)


def test_an_unbooked_super_comes_off_full_and_is_found(creek, shed):
    hive = make_hive(creek, box_medium_10=1, comb_medium_honey=10)
    act = off({hive: 2}, shed)
    found = {row.part.code: row.quantity for row in act.movements.filter(found=True)}
    assert found == {"box-medium-10": 1, "comb-medium-honey": 10}
    assert has(shed, *MEDIUM) == (2, 20, 0)


def test_a_hive_with_no_super_by_the_book_gives_one_all_the_same(creek, shed):
    off({make_hive(creek): 1}, shed)
    assert has(shed, *MEDIUM) == (1, 10, 0)


def test_an_unbooked_super_of_an_all_medium_hive_is_none_of_its_brood_boxes(creek, shed):
    hive = make_hive(creek, hive_set="three-mediums-10")
    act = off({hive: 1}, shed, found_allowed=True)
    assert has(shed, *MEDIUM) == (1, 10, 0)
    assert has(hive, "box-medium-10", "comb-medium-brood") == (3, 30)
    assert {row.part.code for row in act.movements.filter(found=True)} == {
        "box-medium-10",
        "comb-medium-honey",
    }


def test_where_finding_is_not_allowed_the_shortage_is_told(creek, shed):
    hive = make_hive(creek, hive_set="three-mediums-10", box_medium_10=1, comb_medium_honey=10)
    with pytest.raises(Several) as refused:
        off({hive: 2}, shed, found_allowed=False)
    assert {type(one) for one in refused.value.problems} == {NotEnough}
    assert {(one.wanted, one.booked) for one in refused.value.problems} == {(2, 1), (20, 10)}


def test_a_yard_of_two_widths_is_pulled_in_one_act(creek, shed):
    ten = make_hive(creek, "A1", box_medium_10=1, comb_medium_honey=10)
    eight = make_hive(creek, "B1", "one-deep-8", box_medium_8=1, comb_medium_honey=8)
    off({ten: 1, eight: 1}, shed)
    assert has(shed, "box-medium-10", "box-medium-8", "comb-medium-honey") == (1, 1, 18)


def test_a_dead_colony_is_salvaged_not_pulled(creek, shed):
    dead = makers.make_dead_colony(tag="D", yard=creek, gear=True)
    with pytest.raises(ColonyEnded):
        off({dead: 1}, shed)


def test_a_nuc_has_no_supers_and_widths_never_mix(creek, shed):
    nuc, eight = make_hive(creek, "N1", "nuc-5"), make_hive(creek, "B1", "one-deep-8")
    with pytest.raises(NoBoxFits):
        off({nuc: 1}, shed)
    with pytest.raises(Several) as refused:
        off({nuc: 1, eight: 1}, shed, box="super-medium-10")
    assert {type(one) for one in refused.value.problems} == {DoesNotFit}


def test_nothing_told_is_refused(creek, shed):
    with pytest.raises(NothingGiven):
        off({make_hive(creek): 0}, shed)


def test_a_resend_pulls_once(creek, shed):
    hive = make_hive(creek, box_medium_10=2, comb_medium_honey=20)
    assert off({hive: 1}, shed, key="once") == off({hive: 1}, shed, key="once")
    assert has(shed, *MEDIUM) == (1, 10, 0)


def test_what_went_up_comes_down(creek, shed):
    makers.put(creek, {"box-medium-10": 3, "comb-medium-honey": 16, "frame-medium-foundation": 10})
    hives = [make_hive(creek, tag) for tag in ("A1", "A2")]
    super_up(colonies={hives[0]: 2, hives[1]: 1}, source=creek, day=MAY, who=None, key="up", combs=8)
    off({hives[0]: 2, hives[1]: 1}, creek)
    assert has(creek, *MEDIUM) == (3, 26, 0)
    assert [has(hive, *MEDIUM) for hive in hives] == [(0, 0, 0)] * 2


def test_supers_are_the_boxes_above_the_set(creek):
    hive = make_hive(creek, hive_set="deep-and-medium-10", box_medium_10=2)
    gear = sound_gear_on([hive])[hive.pk]
    medium = super_of("super-medium-10")
    assert supers_on(gear, hive.hive_set, medium) == 2
    assert kind_on(gear, hive.hive_set, supers()) == medium
    assert kind_on({}, makers.make_hive_set("nuc-5"), supers()) is None
    assert {piece.part.code: piece.quantity for piece in coming_off(gear, hive.hive_set, medium, 1)} == {
        "box-medium-10": 1
    }
    assert Part.objects.get(code="comb-medium-brood") in gear
