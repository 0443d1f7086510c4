"""Counts of a sheet become drafts beside the book; nothing of them is posted."""

import datetime as dt

import pytest

from apiary.errors import FutureDay
from inventory import counting, loading
from inventory.models import Count, Movement
from inventory.reconcile import Likely
from inventory.sheets import CountedRow, CountRow, Sheet
from inventory.stock import on_hand
from tests.inventory.loading.made import LATER, changed, load, told

BOX = "box-medium-10"


def counted(*lines, yard="shed", day=LATER, note=""):
    return Sheet(counts=(CountRow(yard=yard, day=day, note=note, lines=lines, row=2),))


def test_a_count_becomes_a_draft_and_moves_nothing():
    load()
    before = Movement.objects.count()
    loaded = load(counted(CountedRow(part=BOX, quantity=40), note="wet"), digest="b", day=LATER)
    (draft,) = loaded.drafts
    count = Count.objects.get()
    assert (count.status, count.day, count.note, draft.count) == ("draft", LATER, "wet", count.pk)
    assert [row.words for row in draft.differing] == ["2 missing"]
    assert told(loaded, "counts") == [
        ("Shed, 2026-10-01", "new", "a draft: 0 agree with the book, 1 differ"),
    ]
    assert loaded.sentence == "Made 1 draft of counts: nothing of it is in the books yet."
    assert Movement.objects.count() == before
    counting.post_count(count, who=None)
    assert sum(quantity for gear, quantity in on_hand(count.location).items() if gear.part == BOX) == 45


def test_boxes_counted_on_a_colony_stand_beside_those_booked_there():
    load()
    sheet = counted(
        CountedRow(part=BOX, quantity=0), CountedRow(tag="M-01", part=BOX, quantity=2), yard="mill-field"
    )
    (draft,) = load(sheet, digest="b", day=LATER).drafts
    assert [(str(row.location), row.words) for row in draft.rows] == [
        ("Mill Field (invented)", "agrees"),
        ("M-01", "agrees"),
    ]


def test_a_dry_run_tells_the_same_with_what_may_explain_it_and_leaves_no_draft():
    load()
    places = (("shed", 41), ("mill-field", 1))
    sheet = Sheet(
        counts=tuple(
            CountRow(yard=yard, day=LATER, lines=(CountedRow(part=BOX, quantity=number),))
            for yard, number in places
        )
    )
    tried = loading.dry_run(sheet, day=LATER, digest="b" * 64)
    assert not Count.objects.exists()
    assert Likely.UNBOOKED in {one.likely for draft in tried.drafts for one in draft.explanations}
    assert load(sheet, digest="b", day=LATER).mark == tried.mark


def test_the_same_file_makes_its_drafts_once():
    load()
    sheet = counted(CountedRow(part=BOX, quantity=40))
    load(sheet, digest="b", day=LATER)
    again = load(sheet, digest="b", day=LATER)
    assert again.first_on == LATER and Count.objects.count() == 1


def test_a_count_that_is_refused_leaves_nothing_of_the_sheet():
    tomorrow = dt.date(2999, 1, 1)
    count = CountRow(yard="shed", day=tomorrow, lines=(CountedRow(part=BOX, quantity=1),))
    with pytest.raises(FutureDay):
        load(changed(counts=(count,)))
    assert not Count.objects.exists() and not Movement.objects.exists()
