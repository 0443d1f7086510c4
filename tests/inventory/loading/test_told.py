"""What the books hold, written as a sheet, reads back as no change at all."""

import dataclasses

import pytest

from apiary.models import Yard
from inventory.loading import read, workbook_of
from inventory.loading.told import places_to_count, sheet_by_books
from inventory.sheets.examples import example
from tests.inventory.loading.made import DAY, LATER, changed, load


def test_empty_books_tell_nothing():
    assert sheet_by_books(day=DAY) == changed(
        keeper=None, yards=(), flows=(), colonies=(), gear=(), suppliers=(), offers=(), winters=()
    )


def test_the_books_tell_what_was_loaded():
    load()
    assert sheet_by_books(day=DAY) == changed(colonies=(), gear=())


def test_a_price_that_holds_no_more_is_left_out():
    old = dataclasses.replace(example().offers[0], open_until=DAY)
    load(changed(offers=(old,)))
    assert sheet_by_books(day=DAY).offers == (old,) and sheet_by_books(day=LATER).offers == ()


@pytest.mark.parametrize("kind", ["yards", "prices", "winters", "opening", "count", "everything"])
def test_a_workbook_as_the_books_have_it_changes_nothing(kind):
    load()
    reading = read(workbook_of(kind, day=LATER), day=LATER)
    assert reading.faults == ()
    assert load(reading.sheet, digest="b", day=LATER).differences == ()


def test_a_place_is_counted_beside_the_book_or_blind():
    load()
    shed = Yard.objects.filter(is_shed=True)
    (beside,), (blind,) = places_to_count(shed, day=LATER), places_to_count(shed, day=LATER, blind=True)
    assert [(line.condition, line.booked) for line in beside.lines] == [("sound", 42), ("to mend", 5)]
    assert {line.booked for line in blind.lines} == {None}


def test_hives_are_counted_by_their_boxes():
    load()
    (mill,) = places_to_count(Yard.objects.filter(code="mill-field"), day=LATER, with_colonies=True)
    assert ("M-01", "box-medium-10", 2) in [(line.tag, line.part, line.booked) for line in mill.lines]
