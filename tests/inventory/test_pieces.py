"""The rows of an act's sheet: what lies at a place, in the order of a hive, with what may go onto it."""

import datetime as dt

import pytest

from inventory.gear import Condition, Kind
from inventory.pieces import HEADS, Row, by_head, fitting, many, pair_of, rows_at
from tests import makers

pytestmark = pytest.mark.django_db


@pytest.fixture
def shed():
    shed = makers.make_shed()
    makers.put(shed, {"sugar": 50, "floor-10": 2, "frame-deep": 20, "box-deep-10": 8})
    makers.put(shed, {"box-deep-10": 1}, condition="to mend")
    return shed


def test_rows_come_boxes_first_and_sound_before_broken(shed):
    assert [(row.part.code, str(row.condition), row.booked) for row in rows_at(shed)] == [
        ("box-deep-10", "sound", 8),
        ("box-deep-10", "to mend", 1),
        ("frame-deep", "sound", 20),
        ("floor-10", "sound", 2),
        ("sugar", "sound", 50),
    ]


def test_every_kind_of_gear_has_one_head():
    kinds = [kind for _, kinds in HEADS for kind in kinds]
    assert sorted(kinds) == sorted(Kind)


def test_rows_gather_under_their_heads(shed):
    heads = [(head, len(rows)) for head, rows in by_head(rows_at(shed))]
    assert heads == [
        ("Boxes", 2),
        ("Frames and comb", 1),
        ("Floors and covers", 1),
        ("Feed and consumables", 1),
    ]


def test_a_row_not_in_the_book_is_added_and_nonsense_is_not(shed):
    rows = rows_at(shed, also=["cover-10__held", "chair__sound", "cover-10__shiny", "cover-10"])
    added = [row for row in rows if not row.booked]
    assert [(row.part.code, row.condition) for row in added] == [("cover-10", Condition.HELD)]


def test_rows_of_a_past_evening(shed):
    assert rows_at(shed, as_of=makers.DAY - dt.timedelta(days=1)) == []
    assert len(rows_at(shed, as_of=makers.DAY)) == 5


def test_a_key_names_part_and_condition():
    row = Row(part=makers.part("box-deep-10"), condition=Condition.TO_MEND)
    assert pair_of(row.key) == ("box-deep-10", Condition.TO_MEND)


def test_a_row_tells_its_name_condition_and_unit():
    to_mend = Row(part=makers.part("box-deep-10"), condition=Condition.TO_MEND, booked=2)
    assert (to_mend.name, to_mend.booked_words) == ("Deep box, 10 frames, to mend", "2 by the book")
    paint = Row(part=makers.part("paint"), booked=2)
    assert (paint.booked_words, paint.counted_in) == ("2 quarts by the book", "quarts")


def test_units_follow_their_number():
    assert [many("piece", 1), many("piece", 2), many("lb", 50), many("box", 2)] == [
        "piece",
        "pieces",
        "lb",
        "boxes",
    ]


def test_what_fits_a_hive_is_parted_from_what_does_not_with_the_reason():
    colony = makers.make_colony("F-01", hive_set="two-deeps-8")
    rows = [Row(part=makers.part(code)) for code in ("box-deep-8", "box-deep-10", "frame-deep")]
    fit, why = fitting(rows, colony)
    assert [row.part.code for row in fit] == ["box-deep-8", "frame-deep"]
    assert [sentence.split(":")[0] for sentence in why] == ["deep box, 10 frames does not fit colony F-01"]
