"""Hauls that explain a difference: not booked, booked and not made, the other way, with a later day, to another yard."""

from inventory.reconcile import Likely, explain
from tests.inventory.reconcile.made import HIVE, OTHER, SHED, YARD, difference, facts, moved


def told(rows, **known):
    return [
        (one.likely, one.source, one.target, one.act, one.whole, one.pieces)
        for one in explain(rows, facts(**known))
    ]


def test_the_opposite_difference_elsewhere_is_a_haul_that_was_not_booked():
    rows = [difference("stand", 30, 18), difference("sugar", 100, 50)]
    elsewhere = (difference("stand", 4, 16, place=YARD), difference("sugar", 0, 50, place=YARD))
    assert told(rows, elsewhere=elsewhere) == [
        (Likely.UNBOOKED, SHED, YARD, None, False, (("stand", "sound", 12), ("sugar", "sound", 50)))
    ]


def test_inside_one_count_the_haul_is_told_once_where_it_is_missing():
    rows = [difference("stand", 3, 2), difference("stand", 0, 1, place=HIVE)]
    assert told(rows) == [(Likely.UNBOOKED, SHED, HIVE, None, False, (("stand", "sound", 1),))]


def test_more_here_and_missing_elsewhere_came_from_there():
    elsewhere = (difference("stand", 9, 4, place=YARD),)
    assert told([difference("stand", 0, 5)], elsewhere=elsewhere) == [
        (Likely.UNBOOKED, YARD, SHED, None, False, (("stand", "sound", 5),))
    ]


def test_another_condition_or_the_same_sign_explains_nothing():
    elsewhere = (
        difference("stand", 0, 5, place=YARD, condition="to mend"),
        difference("stand", 9, 4, place=OTHER),
    )
    assert told([difference("stand", 9, 4)], elsewhere=elsewhere) == []


def test_a_booked_load_that_is_missing_never_came():
    load = (moved("stand", 6, YARD, SHED, act=7), moved("sugar", 50, YARD, SHED, act=7))
    rows = [difference("stand", 20, 14), difference("sugar", 50, 0)]
    pieces = (("stand", "sound", 6), ("sugar", "sound", 50))
    assert told(rows, moved=load) == [(Likely.NEVER_CAME, YARD, SHED, 7, True, pieces)]


def test_a_load_of_which_some_came_is_not_reversed_as_a_whole():
    load = (moved("stand", 6, YARD, SHED, act=7), moved("sugar", 50, YARD, SHED, act=7))
    found = told([difference("stand", 20, 14)], moved=load)
    assert found == [(Likely.NEVER_CAME, YARD, SHED, 7, False, (("stand", "sound", 6),))]


def test_a_load_booked_away_that_is_more_here_is_still_here():
    load = (moved("stand", 6, SHED, YARD, act=8),)
    found = told([difference("stand", 10, 16)], moved=load)
    assert found == [(Likely.STILL_HERE, SHED, YARD, 8, True, (("stand", "sound", 6),))]


def test_twice_the_load_missing_is_a_load_booked_the_other_way_round():
    load = (moved("stand", 6, YARD, SHED, act=9),)
    found = told([difference("stand", 20, 8)], moved=load)
    assert found == [(Likely.OTHER_WAY, YARD, SHED, 9, True, (("stand", "sound", 12),))]
    away = (moved("stand", 6, SHED, YARD, act=9),)
    assert told([difference("stand", 8, 20)], moved=away)[0][0] == Likely.OTHER_WAY


def test_a_load_booked_to_another_yard_may_have_come_here():
    load = (moved("stand", 6, SHED, OTHER, act=10),)
    found = told([difference("stand", 0, 6, place=YARD)], moved=load)
    assert found == [(Likely.ELSEWHERE, SHED, OTHER, 10, True, (("stand", "sound", 6),))]


def test_a_load_booked_some_days_later_was_done_by_the_day_of_the_count():
    load = (moved("stand", 6, SHED, YARD, act=11, days=3),)
    found = told([difference("stand", 10, 4)], moved=load)
    assert found == [(Likely.LATER, SHED, YARD, 11, True, (("stand", "sound", 6),))]
    assert told([difference("stand", 4, 10)], moved=load) == []


def test_a_load_that_explains_less_than_half_or_more_than_all_is_not_told():
    rows = [difference("stand", 20, 10)]
    assert told(rows, moved=(moved("stand", 4, YARD, SHED),)) == []
    assert told(rows, moved=(moved("stand", 11, YARD, SHED),)) == []


def test_what_explains_a_difference_whole_is_told_first_then_what_is_nearest():
    load = (
        moved("stand", 5, YARD, SHED, act=1, days=-1),
        moved("stand", 6, YARD, SHED, act=2, days=-9),
        moved("stand", 6, OTHER, SHED, act=3, days=-2),
    )
    assert [row[3] for row in told([difference("stand", 20, 14)], moved=load)] == [3, 2, 1]
