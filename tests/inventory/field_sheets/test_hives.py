"""A dead hive on paper: what the book has on it, or what any hive there stands in, without numbers."""

import pytest

from apiary.models import Colony
from inventory.field_sheets.hives import pieces_of, pieces_of_any
from tests import makers

pytestmark = pytest.mark.django_db


def test_the_pieces_of_a_hive_are_those_of_the_book_boxes_first():
    colony = makers.make_colony("F-01", gear=True)
    rows = pieces_of(colony)
    assert {row.part.code: row.booked for row in rows} == makers.gear_of("two-deeps-10")
    assert rows[0].part.code == "box-deep-10"


def test_of_a_hive_not_known_each_piece_of_any_hive_is_listed_once_without_a_number():
    for tag in ("F-01", "F-02"):
        makers.make_colony(tag, gear=True)
    makers.make_colony("F-03", hive_set="nuc-5", gear=True)
    rows = pieces_of_any(Colony.objects.all())
    codes = [row.part.code for row in rows]
    assert set(codes) == {*makers.gear_of("two-deeps-10"), *makers.gear_of("nuc-5")}
    assert len(codes) == len(set(codes))
    assert {row.booked for row in rows} == {0}


def test_hives_elsewhere_and_gear_no_longer_on_a_hive_are_not_listed():
    makers.make_colony("F-01", gear=True)
    bare = makers.make_colony("F-02")
    assert pieces_of_any([bare]) == []
