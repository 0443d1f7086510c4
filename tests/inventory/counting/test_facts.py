"""What the books know around the day of a count, as plain records."""

import datetime as dt

import pytest

from inventory import counting, ledger
from inventory.counting.facts import hives_on, yards_in_flow
from inventory.ledger import Line
from inventory.locations import store_of
from inventory.reconcile import Difference, Likely, explain
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY


def on(days):
    return DAY + dt.timedelta(days=days)


def haul(source, target, number=4, day=5, part="stand"):
    told = {"lines": [Line(part, number)], "day": on(day), "who": None, "key": makers.fresh_key()}
    return ledger.move(source=source, target=target, **told)


def missing(place, part="stand", booked=10, counted=6):
    return Difference(place=store_of(place).pk, part=part, condition="sound", booked=booked, counted=counted)


def test_acts_that_touched_the_part_here_since_the_last_count_are_told(shed, yard, counted):
    early = haul(shed, yard, day=1)
    counting.post_count(counted(shed, {"stand": 6}, day=on(2)), who=None)
    late = haul(yard, shed, day=5)
    haul(shed, yard, part="box-medium-10", day=5)
    facts = counting.facts_about([missing(shed)], on(10))
    assert [move.act for move in facts.moved] == [late.pk]
    assert early.pk not in [move.act for move in facts.moved]


def test_all_of_an_act_is_told_so_that_it_is_known_whether_it_may_be_reversed_whole(shed, yard):
    lines = [Line("stand", 4), Line("box-medium-10", 2)]
    ledger.move(source=shed, target=yard, lines=lines, day=on(5), who=None, key="m")
    facts = counting.facts_about([missing(shed)], on(10))
    assert {move.part for move in facts.moved} == {"stand", "box-medium-10"}


def test_what_was_reversed_or_only_counted_is_left_out(shed, yard):
    ledger.reverse(act=haul(shed, yard), who=None, key="r")
    ledger.correct(location=shed, counted=[Line("stand", 9)], day=on(6), who=None, key="c")
    assert counting.facts_about([missing(shed)], on(10)).moved == ()


def test_hauls_elsewhere_near_the_day_are_told_too(shed, yard):
    mill = makers.make_yard("mill")
    act = haul(shed, yard)
    facts = counting.facts_about([missing(mill, booked=0, counted=4)], on(10))
    assert [move.act for move in facts.moved] == [act.pk]
    assert counting.facts_about([missing(mill)], on(90)).moved == ()


def test_differences_of_other_counts_near_the_day_are_told_drafts_too(shed, yard, counted):
    mill = makers.make_yard("mill")
    counting.post_count(counted(yard, {"stand": 4}, day=on(8)), who=None)
    counted(mill, {"stand": 2, "cover-10": 0}, day=on(9))
    own = counted(shed, {"stand": 6}, day=on(10))
    facts = counting.facts_about([missing(shed)], on(10), count=own)
    assert [(row.place, row.gap) for row in facts.elsewhere] == [
        (store_of(yard).pk, 4),
        (store_of(mill).pk, 2),
    ]
    assert counting.facts_about([missing(shed)], on(60), count=own).elsewhere == ()


def test_hives_tell_supers_beyond_their_set_flow_and_death(yard, colony):
    makers.make_window(yard, first_week=14, last_week=16)
    dead = makers.make_dead_colony(tag="F-02", yard=yard, gear=True, ended=on(3))
    makers.make_dead_colony(tag="F-03", yard=yard, ended=on(3))
    hives = {hive.tag: hive for hive in hives_on(on(5), {yard.pk})}
    assert set(hives) == {"F-01", "F-02"}
    assert (hives["F-01"].supers, hives["F-01"].in_flow, hives["F-01"].ended) == (1, True, False)
    assert hives["F-02"].ended and hives["F-02"].colony == dead.pk
    assert ("box-medium-10", "sound", 1) in hives["F-01"].gear


def test_a_yard_without_hives_is_told_those_of_all_yards(shed, colony):
    assert [hive.tag for hive in hives_on(DAY, {shed.pk})] == ["F-01"]


@pytest.mark.parametrize(("week", "flowing"), [(13, False), (14, True), (16, True), (17, False)])
def test_flow_is_asked_by_the_week_of_the_day(yard, week, flowing):
    makers.make_window(yard, first_week=14, last_week=16)
    day = dt.date.fromisocalendar(2025, week, 3)
    assert (yard.pk in yards_in_flow(day)) is flowing


def test_a_window_over_new_year_flows_on_both_sides(yard):
    makers.make_window(yard, first_week=50, last_week=3)
    weeks = [(2025, 51), (2025, 2), (2025, 20)]
    days = [dt.date.fromisocalendar(year, week, 1) for year, week in weeks]
    assert [yard.pk in yards_in_flow(day) for day in days] == [True, True, False]


def test_what_is_owed_by_the_day_is_told(shed):
    offer = makers.make_offer({"stand": 2})
    makers.make_order({offer: 3}, placed_on=on(1))
    rows = [missing(shed, booked=0, counted=6)]
    assert [(line.part, line.quantity) for line in counting.facts_about(rows, on(2)).owed] == [("stand", 6)]
    assert counting.facts_about(rows, DAY).owed == ()


def test_a_haul_not_booked_is_explained_from_the_books_themselves(shed, yard, counted):
    counted(yard, {"stand": 4}, day=on(9))
    count = counted(shed, {"stand": 6}, day=on(10))
    rows = [row.difference for row in counting.compared(count)]
    (one,) = explain(rows, counting.facts_about(rows, count.day, count=count))
    assert (one.likely, one.source, one.target) == (
        Likely.UNBOOKED,
        store_of(shed).pk,
        store_of(yard).pk,
    )
