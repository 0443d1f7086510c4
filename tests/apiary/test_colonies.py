"""The life of a colony, act by act, with each refusal; acts told late included."""

import datetime as dt

import pytest
from django.utils import timezone

from apiary import colonies
from apiary.colonies import yard_on, yards_on
from apiary.errors import (
    ColonyEnded,
    ColonyNotStarted,
    FutureDay,
    LaterEvent,
    MoreRestsOnIt,
    MotherUnfit,
    NoTag,
    SameSet,
    SameYard,
    TagTaken,
    UnknownWord,
)
from apiary.models import Colony, ColonyEvent
from apiary.rights import HELPER, NotYours
from tests import makers

pytestmark = pytest.mark.django_db


def day(number, month=5):
    return dt.date(2025, month, number)


@pytest.fixture
def creek(db):
    return makers.make_yard("creek")


@pytest.fixture
def hill(db):
    return makers.make_yard("hill")


@pytest.fixture
def colony(creek):
    return makers.make_colony("A1", yard=creek, day=day(1))


def events(colony):
    return [(event.kind, event.day, event.note) for event in colony.events.order_by("id")]


def start(yard, tag, **fields):
    usual = {"hive_set": makers.make_hive_set(), "day": day(1), "who": None}
    return colonies.start(tag=tag, yard=yard, **{**usual, **fields})


def test_a_colony_starts_with_its_first_event(creek):
    who = makers.make_person()
    colony = start(creek, "  B   2 ", who=who, origin="package", strength="weak", note="by post")
    assert (colony.tag, colony.origin, colony.strength, colony.yard) == ("B 2", "package", "weak", creek)
    event = colony.events.get()
    assert (event.kind, event.day, event.yard, event.who, event.note) == (
        "started",
        day(1),
        creek,
        who,
        "by post",
    )


def test_a_split_names_its_mother(colony, creek):
    daughter = start(creek, "A1a", origin="split", mother=colony, day=day(20))
    assert list(colony.daughters.all()) == [daughter]


def test_a_mother_must_live_on_the_day(colony, creek):
    with pytest.raises(MotherUnfit, match="started only on"):
        start(creek, "x", mother=colony, day=dt.date(2025, 4, 1))
    colonies.end(colony, why="died", day=day(10), who=None)
    with pytest.raises(MotherUnfit, match="ended on"):
        start(creek, "x", mother=colony, day=day(11))


@pytest.mark.parametrize("tag", ["A1", "a1", " A1 "])
def test_a_tag_is_given_once(colony, creek, tag):
    with pytest.raises(TagTaken, match="Creek"):
        start(creek, tag)


@pytest.mark.parametrize("tag", ["", "   ", "x" * 31])
def test_a_tag_has_one_to_thirty_letters(creek, tag):
    with pytest.raises(NoTag):
        start(creek, tag)


def test_nothing_happens_on_a_day_to_come(creek, colony):
    tomorrow = timezone.localdate() + dt.timedelta(days=1)
    with pytest.raises(FutureDay):
        start(creek, "x", day=tomorrow)
    with pytest.raises(FutureDay):
        colonies.judge(colony, strength="weak", day=tomorrow, who=None)


@pytest.mark.parametrize("wrong", ["2025-05-01", dt.datetime(2025, 5, 1, tzinfo=dt.UTC)])
def test_a_day_that_is_no_date_is_a_bug(creek, wrong):
    with pytest.raises(TypeError):
        start(creek, "x", day=wrong)


@pytest.mark.parametrize("field", [{"origin": "egg"}, {"strength": "mighty"}])
def test_words_outside_the_closed_lists_are_refused(creek, field):
    with pytest.raises(UnknownWord, match="choose one of"):
        start(creek, "x", **field)


def test_a_colony_moves_from_yard_to_yard(colony, creek, hill):
    moved = colonies.move(colony, yard=hill, day=day(10), who=None)
    assert moved.yard == Colony.objects.get(pk=colony.pk).yard == hill
    assert [yard_on(colony, day(n)) for n in (1, 9, 10, 30)] == [creek, creek, hill, hill]
    assert yards_on(day(9)) == {colony.pk: creek.pk}
    assert yards_on() == {colony.pk: hill.pk}


def test_a_move_told_late_leaves_the_present_as_it_is(colony, creek, hill):
    mill = makers.make_yard("mill")
    colonies.move(colony, yard=hill, day=day(20), who=None)
    colonies.move(colony, yard=mill, day=day(10), who=None)
    assert Colony.objects.get(pk=colony.pk).yard == hill
    assert yard_on(colony, day(15)) == mill


def test_a_move_to_where_it_stands_is_refused(colony, creek):
    with pytest.raises(SameYard):
        colonies.move(colony, yard=creek, day=day(2), who=None)


def test_strength_is_judged_and_a_late_telling_does_not_undo_a_newer_one(colony):
    assert colonies.judge(colony, strength="strong", day=day(20), who=None).strength == "strong"
    assert colonies.judge(colony, strength="weak", day=day(10), who=None, note="spotty").strength == "strong"
    assert events(colony)[1:] == [("strength", day(20), "strong"), ("strength", day(10), "weak: spotty")]


def test_a_strength_that_is_none_is_refused(colony):
    with pytest.raises(UnknownWord):
        colonies.judge(colony, strength="huge", day=day(2), who=None)


def test_a_colony_comes_to_stand_in_another_set(colony):
    three = makers.make_hive_set("three-mediums-10")
    assert colonies.change_set(colony, hive_set=three, day=day(20), who=None).hive_set == three
    one = makers.make_hive_set("one-deep-10")
    assert colonies.change_set(colony, hive_set=one, day=day(10), who=None).hive_set == three
    assert events(colony)[1:] == [("set", day(20), "three-mediums-10"), ("set", day(10), "one-deep-10")]


def test_the_set_it_stands_in_is_no_change(colony):
    with pytest.raises(SameSet):
        colonies.change_set(colony, hive_set=colony.hive_set, day=day(2), who=None)


def test_a_colony_ends_with_a_day_and_a_reason(colony):
    ended = colonies.end(colony, why="died", day=day(9), who=None, note="mice")
    assert (ended.ended_on, ended.ended_why) == (day(9), "died")
    assert events(colony)[-1] == ("ended", day(9), "died: mice")
    assert list(Colony.objects.alive(on=day(8))) == [colony]
    assert list(Colony.objects.alive(on=day(9))) == []


def test_a_reason_outside_the_closed_list_is_refused(colony):
    with pytest.raises(UnknownWord):
        colonies.end(colony, why="bored", day=day(9), who=None)


def test_a_colony_has_not_ended_before_what_happened_to_it_later(colony):
    colonies.judge(colony, strength="weak", day=day(20), who=None)
    with pytest.raises(LaterEvent) as refused:
        colonies.end(colony, why="died", day=day(9), who=None)
    assert refused.value.event_day == day(20)


def test_nothing_happens_to_a_colony_that_ended_or_had_not_started(colony, hill):
    one = makers.make_hive_set("one-deep-10")
    acts = [
        lambda on: colonies.move(colony, yard=hill, day=on, who=None),
        lambda on: colonies.judge(colony, strength="weak", day=on, who=None),
        lambda on: colonies.change_set(colony, hive_set=one, day=on, who=None),
        lambda on: colonies.end(colony, why="sold", day=on, who=None),
    ]
    for act in acts:
        with pytest.raises(ColonyNotStarted):
            act(dt.date(2025, 4, 30))
    colonies.end(colony, why="sold", day=day(9), who=None)
    for act in acts:
        with pytest.raises(ColonyEnded):
            act(day(9))


def test_a_refused_act_leaves_no_event(colony, creek):
    with pytest.raises(SameYard):
        colonies.move(colony, yard=creek, day=day(2), who=None)
    assert ColonyEvent.objects.count() == 1


def now(colony):
    return Colony.objects.get(pk=colony.pk)


def undo(key):
    return colonies.undo(key, who=None, day=day(28))


def test_every_act_writes_its_key_on_its_event(creek, hill):
    colony = start(creek, "A1", act_key="a")
    colonies.move(colony, yard=hill, day=day(2), who=None, act_key="b")
    colonies.judge(colony, strength="weak", day=day(3), who=None, act_key="c")
    colonies.change_set(
        colony, hive_set=makers.make_hive_set("one-deep-10"), day=day(4), who=None, act_key="d"
    )
    colonies.end(colony, why="sold", day=day(5), who=None, act_key="e")
    assert [event.act_key for event in colony.events.all()] == ["a", "b", "c", "d", "e"]


def test_a_mistake_is_undone_and_never_a_reason_to_end(colony):
    with pytest.raises(UnknownWord, match="died, united, sold, lost"):
        colonies.end(colony, why="mistake", day=day(9), who=None)


def test_undoing_a_move_puts_the_colony_back(colony, creek, hill):
    colonies.move(colony, yard=hill, day=day(10), who=None, act_key="moved")
    assert undo("moved") == [colony]
    assert now(colony).yard == creek
    assert yard_on(colony, day(20)) == creek
    assert yards_on(day(20)) == {colony.pk: creek.pk}
    assert [event.undone for event in colony.events.all()] == [False, True]
    colonies.move(colony, yard=hill, day=day(10), who=None, act_key="moved again")
    assert now(colony).yard == hill


def test_undoing_a_judgement_gives_the_one_before_back(colony):
    for key, strength, on in (("a", "strong", day(10)), ("b", "weak", day(20)), ("late", "fair", day(15))):
        colonies.judge(colony, strength=strength, day=on, who=None, act_key=key)
    undo("late")
    assert now(colony).strength == "weak"
    undo("b")
    assert now(colony).strength == "strong"
    undo("a")
    assert now(colony).strength == "fair"


def test_judgements_undone_in_any_order_leave_the_first_strength(colony):
    for key, strength, on in (("a", "strong", day(10)), ("b", "weak", day(20))):
        colonies.judge(colony, strength=strength, day=on, who=None, act_key=key)
    undo("a")
    assert now(colony).strength == "weak"
    undo("b")
    assert now(colony).strength == "fair"


def test_undoing_another_set_gives_the_old_one_back(colony):
    three = makers.make_hive_set("three-mediums-10")
    colonies.change_set(colony, hive_set=three, day=day(20), who=None, act_key="set")
    undo("set")
    assert now(colony).hive_set == makers.make_hive_set("two-deeps-10")


def test_undoing_an_end_gives_the_colony_its_life_back(colony):
    colonies.end(colony, why="died", day=day(9), who=None, act_key="dead")
    undo("dead")
    assert (now(colony).ended_on, now(colony).ended_why) == (None, "")
    assert colonies.judge(colony, strength="weak", day=day(12), who=None).strength == "weak"


def test_a_colony_started_by_mistake_counts_nowhere_and_frees_its_tag(colony, creek):
    who = makers.make_person()
    daughter = start(creek, "A1a", origin="split", mother=colony, day=day(20), act_key="split")
    colonies.undo("split", who=who, day=day(21))
    daughter = now(daughter)
    assert (daughter.ended_on, daughter.ended_why) == (day(20), "mistake")
    assert daughter.tag == f"A1a, mistake {daughter.pk}"
    assert list(Colony.objects.alive(on=day(20))) == [colony]
    last = daughter.events.last()
    assert (last.kind, last.who, last.note) == ("ended", who, "mistake: A1a, undone on 21 May 2025")
    assert start(creek, "A1a", origin="split", mother=colony, day=day(22)).pk != daughter.pk


def test_all_colonies_of_an_act_are_put_back_together(creek, hill):
    bees = [makers.make_colony(yard=creek) for _ in range(3)]
    for colony in bees:
        colonies.move(colony, yard=hill, day=day(10), who=None, act_key="load")
        colonies.judge(colony, strength="weak", day=day(10), who=None, act_key="load")
    assert len(undo("load")) == 3
    assert {(now(colony).yard, now(colony).strength) for colony in bees} == {(creek, "fair")}


def test_what_something_later_rests_on_is_not_undone(colony, creek, hill):
    mill = makers.make_yard("mill")
    colonies.move(colony, yard=hill, day=day(10), who=None, act_key="first")
    colonies.move(colony, yard=mill, day=day(20), who=None, act_key="second")
    with pytest.raises(MoreRestsOnIt, match="Undo that first") as refused:
        undo("first")
    assert (refused.value.event_day, refused.value.later_day) == (day(10), day(20))
    undo("second")
    undo("first")
    assert now(colony).yard == creek


def test_a_set_that_was_changed_again_is_not_undone(colony):
    for key, code, on in (("a", "one-deep-10", day(10)), ("b", "three-mediums-10", day(11))):
        colonies.change_set(colony, hive_set=makers.make_hive_set(code), day=on, who=None, act_key=key)
    with pytest.raises(MoreRestsOnIt):
        undo("a")


def test_a_start_is_not_undone_once_the_colony_has_a_life(creek):
    colony = start(creek, "B1", act_key="started")
    colonies.judge(colony, strength="weak", day=day(1), who=None)
    with pytest.raises(MoreRestsOnIt):
        undo("started")
    mother = start(creek, "B2", act_key="mother")
    start(creek, "B2a", origin="split", mother=mother, day=day(20), act_key="daughter")
    with pytest.raises(MoreRestsOnIt, match="B2a started"):
        undo("mother")
    undo("daughter")
    undo("mother")
    assert now(mother).ended_why == "mistake"


def test_a_refused_undoing_leaves_everything_as_it_was(colony, hill):
    other = makers.make_colony(yard=colony.yard)
    for bees in (other, colony):
        colonies.move(bees, yard=hill, day=day(10), who=None, act_key="load")
    colonies.end(colony, why="died", day=day(12), who=None)
    with pytest.raises(MoreRestsOnIt):
        undo("load")
    assert now(other).yard == hill
    assert not ColonyEvent.objects.filter(undone=True).exists()


def test_no_key_undoes_nothing(colony):
    assert undo("") == []
    assert not colony.events.filter(undone=True).exists()


def test_an_undoing_is_not_of_a_day_to_come(colony):
    with pytest.raises(FutureDay):
        colonies.undo("x", who=None, day=timezone.localdate() + dt.timedelta(days=1))


def test_a_helper_changes_no_colony_outside_the_yards_given_and_takes_none_from_there():
    mine, far = makers.make_yard("fern-hollow"), makers.make_yard("long-acre")
    here, away = makers.make_colony("F-1", yard=mine), makers.make_colony("L-1", yard=far)
    helper = makers.make_person("sam", role=HELPER, yards=[mine])
    acts = (
        lambda: colonies.end(away, why="died", day=makers.DAY, who=helper),
        lambda: colonies.move(away, yard=mine, day=makers.DAY, who=helper),
        lambda: colonies.move(here, yard=far, day=makers.DAY, who=helper),
        lambda: colonies.start(tag="L-2", yard=far, hive_set=away.hive_set, day=makers.DAY, who=helper),
    )
    for act in acts:
        with pytest.raises(NotYours, match="Long Acre is not among the yards given to you"):
            act()
    assert set(Colony.objects.values_list("tag", "yard", "ended_on")) == {
        ("F-1", mine.pk, None),
        ("L-1", far.pk, None),
    }
    colonies.judge(here, strength="weak", day=makers.DAY, who=helper)
