"""The rows of a count: beside the book what it has, blind what may be there; hive by hive where wanted."""

import datetime as dt

import pytest

from apiary import colonies
from inventory import counting, ledger
from inventory.ledger import Line
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY


def rows(count, **more):
    return {
        str(place.location): [row.key for row in place.rows]
        for place in counting.sheet_of(count, **more).places
    }


def begin(place, **fields):
    return counting.begin(
        location=place, who=None, key=makers.fresh_key(), **{"day": DAY + dt.timedelta(days=5), **fields}
    )


def test_beside_the_book_the_rows_are_what_it_has_there(shed):
    sheet = counting.sheet_of(begin(shed))
    assert [(row.key, row.booked) for _, row in sheet.rows] == [
        ("box-medium-10__sound", 20),
        ("comb-medium-honey__sound", 200),
        ("stand__sound", 10),
    ]


def test_blind_the_rows_are_what_passed_through_in_a_year_there_or_not(shed, yard):
    ledger.move(source=shed, target=yard, lines=[Line("stand", 10)], day=DAY, who=None, key="m")
    assert rows(begin(shed, blind=True))["Shed"] == [
        "box-medium-10__sound",
        "comb-medium-honey__sound",
        "stand__sound",
    ]
    assert "stand__sound" not in rows(begin(shed))["Shed"]
    assert rows(begin(shed, blind=True, day=DAY + dt.timedelta(days=400)))["Shed"] == [
        "box-medium-10__sound",
        "comb-medium-honey__sound",
    ]


def test_rows_are_added_and_entered_ones_stay(shed, counted):
    count = counted(shed, {"cover-10": 2})
    keys = rows(count, also=["floor-10__to_mend", "no-such-part__sound", "nonsense"])["Shed"]
    assert {"cover-10__sound", "floor-10__to_mend"} <= set(keys)
    assert not any(key.startswith("no") for key in keys)
    assert list(counting.sheet_of(count).entered.values()) == [2]


def test_hives_of_the_yard_that_evening_have_their_boxes_alone(yard, colony):
    elsewhere = makers.make_colony("M-01", gear=True)
    gone = makers.make_dead_colony(tag="F-09", yard=yard, ended=DAY)
    dead = makers.make_dead_colony(tag="F-02", yard=yard, gear=True, ended=DAY + dt.timedelta(days=1))
    told = rows(begin(yard, with_colonies=True))
    assert told["F-01"] == ["box-deep-10__sound", "box-medium-10__sound"]
    assert str(dead) in told
    assert str(elsewhere) not in told and str(gone) not in told
    assert list(rows(begin(yard))) == ["Fern Hollow"]


def test_a_hive_is_counted_where_it_stood_that_evening(yard, colony):
    other = makers.make_yard("mill")
    colonies.move(colony, yard=other, day=DAY + dt.timedelta(days=9), who=None)
    assert "F-01" in rows(begin(yard, with_colonies=True))
    late = begin(yard, with_colonies=True, day=DAY + dt.timedelta(days=9))
    assert "F-01" not in rows(late)


def test_blind_a_hive_has_a_row_for_each_box_of_its_width(yard, colony):
    told = rows(begin(yard, with_colonies=True, blind=True))["F-01"]
    assert told == ["box-deep-10__sound", "box-medium-10__sound", "box-shallow-10__sound"]
