"""Super up and a further brood box, a whole yard at once: what goes on, what is found, what is refused."""

import datetime as dt

import pytest
from django.utils import timezone

from apiary.models import Colony
from inventory import ledger
from inventory.errors import (
    ColonyEnded,
    ColonyNotStarted,
    DoesNotFit,
    FutureDay,
    NoBoxFits,
    NotAStore,
    NotEnough,
    NothingGiven,
    Several,
    UnknownBox,
    UnknownWord,
)
from inventory.gear import Gear
from inventory.ledger import Line
from inventory.models import Act, Location, Movement
from inventory.stock import found_gear, on_hand
from inventory.yardwork import undo
from inventory.yardwork.boxes import add_brood_box, super_up
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY
MAY = dt.date(2025, 5, 1)
SUPERS = {"box-medium-10": 6, "comb-medium-honey": 25, "frame-medium-foundation": 30}


@pytest.fixture
def creek(db):
    yard = makers.make_yard("creek")
    makers.put(yard, SUPERS)
    return yard


@pytest.fixture
def hives(creek):
    return [makers.make_colony(f"A{n}", yard=creek, gear=True) for n in (1, 2, 3)]


def up(colonies, source, *, day=MAY, who=None, key=None, **fields):
    return super_up(
        colonies=colonies, source=source, day=day, who=who, key=key or makers.fresh_key(), **fields
    )


def box(colonies, source, *, day=MAY, who=None, key=None, **fields):
    return add_brood_box(
        colonies=colonies, source=source, day=day, who=who, key=key or makers.fresh_key(), **fields
    )


def has(ground, *codes):
    gear = on_hand(ground)
    return tuple(gear.get(Gear(part=code), 0) for code in codes)


MEDIUM = ("box-medium-10", "comb-medium-honey", "frame-medium-foundation")


def test_every_hive_gets_its_boxes_comb_first(creek, hives):
    act = up({hives[0]: 1, hives[1]: 2, hives[2]: 1}, creek)
    assert (act.name, act.day) == ("super up", MAY)
    assert [has(hive, *MEDIUM) for hive in hives] == [(1, 10, 0), (2, 10, 10), (1, 0, 10)]
    assert has(creek, *MEDIUM) == (2, 5, 10)
    assert not act.movements.filter(found=True).exists()


def test_an_exception_of_none_gets_none(creek, hives):
    up({hives[0]: 1, hives[1]: 0}, creek)
    assert has(hives[1], *MEDIUM) == (0, 0, 0)


def test_spaced_combs_and_what_the_keeper_puts_in(creek, hives):
    # eight extracting combs in a super for ten: USDA, The Home Apiary, part 3
    up(dict.fromkeys(hives, 1), creek, combs=8)
    assert [has(hive, *MEDIUM) for hive in hives] == [(1, 8, 0)] * 3
    up({hives[0]: 1}, creek, fill="foundation")
    assert has(hives[0], *MEDIUM) == (2, 8, 10)


def test_without_a_box_told_each_hive_gets_its_own_width(creek, hives):
    makers.put(creek, {"box-medium-8": 1, "frame-medium-foundation": 8})
    small = makers.make_colony("B1", yard=creek, hive_set="one-deep-8", gear=True)
    up({hives[0]: 1, small: 1}, creek, fill="foundation")
    assert has(small, "box-medium-8", "frame-medium-foundation") == (1, 8)
    assert has(hives[0], "box-medium-10") == (1,)


def test_what_the_hand_holds_beyond_the_book_goes_on_and_is_found(creek, hives):
    act = up({hives[0]: 4, hives[1]: 4}, creek)
    found = {row.part.code: row.quantity for row in act.movements.filter(found=True)}
    assert found == {"box-medium-10": 2, "frame-medium-foundation": 30}
    assert has(creek, *MEDIUM) == (0, 5, 0)
    assert {row.act for row in found_gear()} == {act}
    undo(act, who=None, key="back")
    assert has(creek, *MEDIUM) == (6, 25, 30)
    assert list(found_gear()) == []


def test_where_finding_is_not_allowed_the_shortage_is_told(creek, hives):
    with pytest.raises(Several) as refused:
        up({hives[0]: 7}, creek, fill="drawn", combs=8, found_allowed=False)
    assert {type(one) for one in refused.value.problems} == {NotEnough}
    assert {(one.wanted, one.booked) for one in refused.value.problems} == {(7, 6), (56, 25)}


def test_gear_that_leaves_the_store_later_is_not_counted_twice(creek, hives):
    later = dt.date(2025, 5, 9)
    line = [Line("comb-medium-honey", 20)]
    ledger.move(source=creek, target=makers.make_shed(), lines=line, day=later, who=None, key="m")
    up({hives[0]: 1}, creek)
    assert has(hives[0], *MEDIUM) == (1, 0, 10)


def test_a_resend_puts_nothing_on_twice(creek, hives):
    first = up({hives[0]: 1}, creek, key="once")
    assert up({hives[0]: 1}, creek, key="once") == first
    assert has(hives[0], *MEDIUM) == (1, 10, 0)


def test_the_whole_yard_is_undone_together(creek, hives):
    act = up(dict.fromkeys(hives, 1), creek)
    undo(act, who=None, key="back")
    assert has(creek, *MEDIUM) == (6, 25, 30)
    assert has(hives[0], *MEDIUM) == (0, 0, 0)


def test_a_misfit_takes_the_whole_act_back(creek, hives):
    small = makers.make_colony("B1", yard=creek, hive_set="one-deep-8")
    nuc = makers.make_colony("N1", yard=creek, hive_set="nuc-5")
    with pytest.raises(Several) as refused:
        up({hives[0]: 1, small: 1, nuc: 1}, creek, box="super-medium-10")
    assert [type(one) for one in refused.value.problems] == [DoesNotFit, DoesNotFit]
    assert [one.wanted_width for one in refused.value.problems] == [8, 5]
    with pytest.raises(NoBoxFits, match="N1"):
        up({hives[0]: 1, nuc: 1}, creek)
    assert not Act.objects.filter(name="super up").exists()


def test_a_dead_colony_a_day_before_it_and_a_day_to_come_are_refused(creek, hives):
    dead = makers.make_dead_colony(tag="D", yard=creek, ended=DAY)
    with pytest.raises(ColonyEnded):
        up({hives[0]: 1, dead: 1}, creek)
    with pytest.raises(ColonyNotStarted):
        up({hives[0]: 1}, creek, day=DAY - dt.timedelta(days=1))
    with pytest.raises(FutureDay):
        up({hives[0]: 1}, creek, day=timezone.localdate() + dt.timedelta(days=1))
    assert has(creek, *MEDIUM) == (6, 25, 30)


@pytest.mark.parametrize(
    ("fields", "refusal"),
    [
        ({"box": "super-giant-12"}, UnknownBox),
        ({"fill": "water"}, UnknownWord),
        ({"combs": 7}, UnknownWord),
        ({"combs": 11}, UnknownWord),
    ],
)
def test_words_that_are_none_are_refused(creek, hives, fields, refusal):
    with pytest.raises(refusal, match="choose one of"):
        up({hives[0]: 1}, creek, **fields)


def test_nothing_told_and_a_source_that_is_no_store_are_refused(creek, hives):
    with pytest.raises(NothingGiven):
        up({hives[0]: 0}, creek)
    with pytest.raises(NotAStore):
        up({hives[0]: 1}, hives[1])


def test_held_back_gear_is_never_taken(creek, hives):
    makers.put(creek, {"comb-medium-honey": 50}, condition="held back")
    up({hives[0]: 3}, creek)
    assert has(hives[0], *MEDIUM) == (3, 20, 10)
    assert not Movement.objects.filter(condition="held back", target__kind=Location.Kind.COLONY).exists()


def test_a_brood_box_changes_the_set_the_colony_stands_in(creek):
    makers.put(creek, {"box-deep-10": 2, "comb-deep-brood": 6, "comb-deep-brood-treated": 4})
    single = makers.make_colony("S1", yard=creek, hive_set="one-deep-10", gear=True)
    act = box({single: 1}, creek)
    assert Colony.objects.get(pk=single.pk).hive_set.code == "two-deeps-10"
    assert has(single, "box-deep-10", "comb-deep-brood", "comb-deep-brood-treated") == (2, 16, 4)
    event = single.events.get(kind="set")
    assert (event.act_key, event.note, event.was) == (act.key, "two-deeps-10", "one-deep-10")
    undo(act, who=None, key="back")
    assert Colony.objects.get(pk=single.pk).hive_set.code == "one-deep-10"
    assert has(single, "box-deep-10", "comb-deep-brood") == (1, 10)


def test_a_medium_makes_another_set_of_a_single_deep(creek):
    single = makers.make_colony("S1", yard=creek, hive_set="one-deep-10", gear=True)
    box({single: 1}, creek, box="brood-box-medium-10", fill="foundation")
    assert Colony.objects.get(pk=single.pk).hive_set.code == "deep-and-medium-10"


def test_where_the_keeper_has_no_such_set_the_colony_keeps_its_own(creek, hives):
    makers.put(creek, {"box-deep-10": 1, "frame-deep-foundation": 10})
    box({hives[0]: 1}, creek)
    assert Colony.objects.get(pk=hives[0].pk).hive_set.code == "two-deeps-10"
    assert has(hives[0], "box-deep-10", "frame-deep-foundation") == (3, 10)


def test_a_yard_of_two_widths_gets_each_its_own_brood_box(creek):
    singles = [
        makers.make_colony(tag, yard=creek, hive_set=code, gear=True)
        for tag, code in (("S1", "one-deep-10"), ("S2", "one-deep-8"))
    ]
    act = box(dict.fromkeys(singles, 1), creek)
    assert sorted((row.part.code, row.quantity) for row in act.movements.filter(found=True)) == [
        ("box-deep-10", 1),
        ("box-deep-8", 1),
        ("frame-deep-foundation", 18),
    ]
    assert [Colony.objects.get(pk=one.pk).hive_set.code for one in singles] == ["two-deeps-10", "two-deeps-8"]


def test_an_all_medium_hive_gets_a_medium(creek):
    hive = makers.make_colony("M1", yard=creek, hive_set="three-mediums-10", gear=True)
    box({hive: 1}, creek)
    assert has(hive, "box-medium-10", "box-deep-10") == (4, 0)


def test_a_brood_box_that_fails_leaves_the_set_as_it_was(creek, monkeypatch):
    single = makers.make_colony("S1", yard=creek, hive_set="one-deep-10", gear=True)
    monkeypatch.setattr("inventory.ledger.posting._carry", lambda changes: 1 / 0)
    with pytest.raises(ZeroDivisionError):
        box({single: 1}, creek)
    assert Colony.objects.get(pk=single.pk).hive_set.code == "one-deep-10"
    assert not single.events.filter(kind="set").exists()
