"""Splits and hived nucs: combs go along, the store gives the rest, mother and daughter are linked, all of it or none."""

import datetime as dt

import pytest

from apiary.errors import TagTaken
from apiary.models import Colony, ColonyEvent
from apiary.queens import queen_of
from inventory import ledger
from inventory.errors import ColonyEnded, ColonyNotStarted, FutureDay, HeldBack, KeyTaken, NotWhole, Several
from inventory.gear import Comb
from inventory.ledger import Line
from inventory.models import Act, GearSet
from inventory.proof import prove
from inventory.stock import found_gear, on_hand, owned
from inventory.yardwork import undo
from inventory.yardwork.refusals import NoBoxForFrames, NoColony, NoRoomForFrames, NotANuc, StillANuc
from inventory.yardwork.splitting import Daughters, SplitPlan, hive_nuc, split
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY
MAY = DAY + dt.timedelta(days=30)
STORE = {
    "box-deep-10": 6,
    "floor-10": 6,
    "inner-cover-10": 6,
    "cover-10": 6,
    "frame-deep-foundation": 60,
    "nuc-box-5": 6,
}


@pytest.fixture
def creek(db):
    yard = makers.make_yard("creek")
    makers.put(yard, STORE)
    return yard


@pytest.fixture
def mother(creek):
    return makers.make_colony("A1", yard=creek, gear=True)


def parted(mother, *tags, hive_set="one-deep-10", key="split-1", day=MAY, **plan):
    usual = {"hive_set": makers.make_hive_set(hive_set), "source": mother.yard}
    return split(
        daughters=[Daughters(mother=mother, tags=tags)],
        plan=SplitPlan(**{**usual, **plan}),
        day=day,
        who=None,
        key=key,
    )


def gear(ground, **fields):
    return {piece.part: number for piece, number in on_hand(ground, **fields).items()}


def only(part, ground):
    return gear(ground).get(part, 0)


def test_five_combs_go_along_and_the_store_gives_the_rest(creek, mother):
    parted(mother, "A2")
    daughter = Colony.objects.get(tag="A2")
    assert (daughter.mother, daughter.origin, daughter.started_on, daughter.yard) == (
        mother,
        "split",
        MAY,
        creek,
    )
    assert gear(daughter) == {
        "box-deep-10": 1,
        "comb-deep-brood": 5,
        "cover-10": 1,
        "floor-10": 1,
        "frame-deep-foundation": 5,
        "inner-cover-10": 1,
    }
    assert gear(mother) == {
        "box-deep-10": 2,
        "comb-deep-brood": 15,
        "cover-10": 1,
        "floor-10": 1,
        "frame-deep-foundation": 5,
        "inner-cover-10": 1,
    }
    assert (only("box-deep-10", creek), only("frame-deep-foundation", creek)) == (5, 50)


def test_nothing_is_made_and_nothing_lost(creek, mother):
    before = owned()
    parted(mother, "A2", "A3", frames=4)
    assert owned() == before
    assert not found_gear()
    assert prove().faults == ()


def test_both_histories_tell_of_it(mother):
    parted(mother, "A2", queen="cell")
    assert mother.events.get(kind="split").note == "A2"
    daughter = Colony.objects.get(tag="A2")
    kinds = list(daughter.events.order_by("id").values_list("kind", "act_key"))
    assert kinds == [("started", "split-1"), ("requeened", "split-1")]
    assert queen_of(daughter).words == "a queen cell given"


def test_the_mother_s_gaps_may_stay_open(creek, mother):
    parted(mother, "A2", refill=False)
    assert (only("comb-deep-brood", mother), only("frame-deep-foundation", mother)) == (15, 0)
    assert only("frame-deep-foundation", creek) == 55


def test_the_set_may_be_filled_with_drawn_comb(creek, mother):
    makers.put(creek, {"comb-deep-brood": 10})
    parted(mother, "A2", fill=Comb.DRAWN)
    assert only("comb-deep-brood", creek) == 0
    assert only("comb-deep-brood", mother) == 20


def test_a_nuc_takes_no_frames_of_the_store(creek, mother):
    parted(mother, "A2", hive_set="nuc-5", refill=False)
    assert gear(Colony.objects.get(tag="A2")) == {"comb-deep-brood": 5, "nuc-box-5": 1}
    assert only("frame-deep-foundation", creek) == 60


def test_daughters_may_go_to_another_yard(mother):
    hill = makers.make_yard("hill")
    parted(mother, "A2", yard=hill)
    assert Colony.objects.get(tag="A2").yard == hill


def test_several_splits_of_many_mothers_are_one_act(creek, mother):
    other = makers.make_colony("B1", yard=creek, gear=True)
    split(
        daughters=[Daughters(mother=mother, tags=("A2", "A3")), Daughters(mother=other, tags=("B2",))],
        plan=SplitPlan(hive_set=makers.make_hive_set("one-deep-10"), source=creek),
        day=MAY,
        who=None,
        key="many",
    )
    assert {one.tag: one.mother.tag for one in Colony.objects.exclude(mother=None)} == {
        "A2": "A1",
        "A3": "A1",
        "B2": "B1",
    }
    assert Act.objects.filter(name="split").count() == 1
    assert only("comb-deep-brood", mother) == 10


def test_frames_the_book_still_has_with_foundation_are_booked_as_drawn(creek):
    young = makers.make_colony("Y1", yard=creek, hive_set="one-deep-10")
    makers.put(young, {"box-deep-10": 1, "comb-deep-brood": 2, "frame-deep-foundation": 8})
    parted(young, "Y2", refill=False)
    assert only("comb-deep-brood", Colony.objects.get(tag="Y2")) == 5
    assert gear(young) == {"box-deep-10": 1, "frame-deep-foundation": 5}
    assert not found_gear()
    assert prove().faults == ()


def test_brood_comb_goes_before_honey_comb(creek):
    colony = makers.make_colony("H1", yard=creek, hive_set="one-deep-10")
    makers.put(colony, {"comb-deep-brood": 3, "comb-deep-honey": 7})
    parted(colony, "H2", frames=4, refill=False)
    daughter = gear(Colony.objects.get(tag="H2"))
    assert (daughter["comb-deep-brood"], daughter["comb-deep-honey"]) == (3, 1)


def test_combs_and_gear_beyond_the_book_are_found_in_the_same_act(creek):
    bare = makers.make_colony("N1", yard=creek)
    act = parted(bare, "N2", source=makers.make_shed(), refill=False)
    found = {row.part.code: row.quantity for row in found_gear()}
    assert found == {
        "comb-deep-brood": 5,
        "box-deep-10": 1,
        "cover-10": 1,
        "floor-10": 1,
        "inner-cover-10": 1,
        "frame-deep-foundation": 5,
    }
    assert {row.act for row in found_gear()} == {act}
    assert gear(bare) == {}


def test_a_resend_splits_once(mother):
    first = parted(mother, "A2")
    assert parted(mother, "A2") == first
    assert Colony.objects.count() == 2
    with pytest.raises(KeyTaken):
        hive_nuc(
            colony=mother,
            hive_set=makers.make_hive_set("one-deep-10"),
            source=mother.yard,
            into=mother.yard,
            day=MAY,
            who=None,
            key="split-1",
        )


def test_undone_it_is_as_before_and_the_tag_is_free(creek, mother):
    before = gear(creek), gear(mother)
    undo(parted(mother, "A2", queen="raised"), who=None, key="back")
    assert (gear(creek), gear(mother)) == before
    assert Colony.objects.alive(on=MAY).count() == 1
    parted(mother, "A2", key="again")
    assert prove().faults == ()


def test_a_dead_colony_is_not_split(creek):
    dead = makers.make_dead_colony(tag="D1", yard=creek, gear=True, ended=MAY)
    with pytest.raises(ColonyEnded, match="D1"):
        parted(dead, "D2")
    assert not Act.objects.filter(name="split").exists()


def test_a_split_told_late_from_a_colony_that_died_since_is_booked(creek):
    dead = makers.make_dead_colony(tag="D1", yard=creek, gear=True, ended=dt.date(2025, 7, 1))
    parted(dead, "D2")
    assert Colony.objects.get(tag="D2").mother == dead


def test_days_before_the_colony_or_to_come_are_refused(mother):
    with pytest.raises(ColonyNotStarted):
        parted(mother, "A2", day=DAY - dt.timedelta(days=1))
    with pytest.raises(FutureDay):
        parted(mother, "A2", day=dt.date(2999, 1, 1))


def test_a_tag_that_is_taken_refuses_the_whole_act(creek, mother):
    makers.make_colony("B1", yard=creek)
    before = gear(creek)
    with pytest.raises(TagTaken, match="B1"):
        parted(mother, "A2", "b1")
    with pytest.raises(TagTaken):
        parted(mother, "A2", "A2")
    assert gear(creek) == before
    assert not Colony.objects.filter(tag="A2").exists()
    assert not ColonyEvent.objects.filter(act_key="split-1").exists()


def test_all_that_is_wrong_with_a_whole_yard_is_told_at_once(creek, mother):
    dead = makers.make_dead_colony(tag="D1", yard=creek, ended=MAY)
    makers.make_colony("B1", yard=creek)
    with pytest.raises(Several) as refusal:
        split(
            daughters=[Daughters(mother=dead, tags=("A2",)), Daughters(mother=mother, tags=("B1",))],
            plan=SplitPlan(hive_set=makers.make_hive_set("one-deep-10"), source=creek),
            day=MAY,
            who=None,
            key="many",
        )
    assert [type(problem) for problem in refusal.value.problems] == [ColonyEnded, TagTaken]


def test_more_frames_than_the_set_takes_or_none_at_all(mother):
    with pytest.raises(NoRoomForFrames, match="6 deep frames do not go into nuc, 5 frames: it takes 5"):
        parted(mother, "A2", hive_set="nuc-5", frames=6)
    with pytest.raises(NotWhole):
        parted(mother, "A2", frames=-1)
    parted(mother, "A2", frames=0)
    assert only("frame-deep-foundation", Colony.objects.get(tag="A2")) == 10


def test_no_split_at_all_is_refused(mother):
    with pytest.raises(NoColony):
        parted(mother)


def test_a_hive_with_gear_held_back_gives_no_combs(mother):
    ledger.mark(
        at=mother, lines=[Line("comb-deep-brood", 1)], becomes="held back", day=MAY, who=None, key="m"
    )
    with pytest.raises(HeldBack, match="A1"):
        parted(mother, "A2")


@pytest.fixture
def nuc(creek):
    return makers.make_colony("N1", yard=creek, hive_set="nuc-5", gear=True)


def hived(colony, hive_set="one-deep-10", *, key="hive-1", **fields):
    usual = {"source": colony.yard, "into": colony.yard, "day": MAY, "who": None}
    return hive_nuc(colony=colony, hive_set=makers.make_hive_set(hive_set), key=key, **{**usual, **fields})


def test_a_hived_nuc_stands_in_the_full_set_and_its_box_is_back(creek, nuc):
    before = owned()
    hived(nuc)
    nuc.refresh_from_db()
    assert nuc.hive_set.code == "one-deep-10"
    assert gear(nuc) == {
        "box-deep-10": 1,
        "comb-deep-brood": 5,
        "cover-10": 1,
        "floor-10": 1,
        "frame-deep-foundation": 5,
        "inner-cover-10": 1,
    }
    assert only("nuc-box-5", creek) == 7
    assert owned() == before
    assert prove().faults == ()


def test_a_nuc_box_the_book_did_not_know_is_found(creek):
    colony = makers.make_colony("N2", yard=creek, hive_set="nuc-5")
    hived(colony)
    assert {row.part.code for row in found_gear()} == {"nuc-box-5"}
    assert only("nuc-box-5", creek) == 7


def test_what_is_there_already_is_not_given_twice(creek, nuc):
    outfit = GearSet.objects.get(hive_set="one-deep-10")
    outfit.lines.create(part=makers.part("stand"), quantity=1)
    makers.put(nuc, {"stand": 1})
    makers.put(creek, {"stand": 1})
    hived(nuc)
    assert (only("stand", nuc), only("stand", creek)) == (1, 1)


def test_only_a_nuc_is_hived_and_only_into_a_full_set(mother, nuc):
    with pytest.raises(NotANuc, match="A1"):
        hived(mother)
    with pytest.raises(StillANuc):
        hived(nuc, "nuc-5")
    with pytest.raises(NoBoxForFrames, match="deep frames do not hang in three mediums"):
        hived(nuc, "three-mediums-10")


def test_a_dead_nuc_is_not_hived(creek):
    with pytest.raises(ColonyEnded):
        hived(makers.make_dead_colony(tag="N3", yard=creek, hive_set="nuc-5", ended=MAY))


def test_more_frames_than_the_new_set_takes_are_told(creek):
    colony = makers.make_colony("N4", yard=creek, hive_set="nuc-5")
    makers.put(colony, {"nuc-box-5": 1, "comb-deep-brood": 9})
    with pytest.raises(NoRoomForFrames):
        hived(colony, "one-deep-8")


def test_hiving_is_resent_and_undone(creek, nuc):
    before = gear(creek), gear(nuc)
    act = hived(nuc)
    assert hived(nuc) == act
    undo(act, who=None, key="back")
    nuc.refresh_from_db()
    assert (nuc.hive_set.code, gear(creek), gear(nuc)) == ("nuc-5", *before)
