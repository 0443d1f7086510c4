"""A count is a draft until it is posted: nothing entered is lost, nothing of it is in the books."""

import datetime as dt

import pytest
from django.utils import timezone

from inventory import counting, stock
from inventory.errors import (
    ColonyNotStarted,
    CountClosed,
    CountOfSeveral,
    FutureDay,
    NotAStore,
    NotWhole,
    Several,
    UnknownCondition,
    UnknownPart,
)
from inventory.gear import Gear
from inventory.locations import outside
from inventory.models import Act, Count
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY


def begin(place, key="k", day=DAY, **fields):
    return counting.begin(location=place, day=day, who=None, key=key, **fields)


def lines(count):
    return {(line.part.code, line.condition): line.quantity for line in count.lines.select_related("part")}


def test_what_is_entered_stays_in_the_draft_and_out_of_the_books(shed, counted):
    before = Act.objects.count()
    count = counted(shed, {"box-medium-10": 18, "stand": 0})
    assert lines(count) == {("box-medium-10", "sound"): 18, ("stand", "sound"): 0}
    assert Act.objects.count() == before
    assert stock.on_hand(shed)[Gear(part="box-medium-10")] == 20


def test_a_resend_gives_the_first_draft(shed, yard):
    assert begin(shed) == begin(yard)
    assert Count.objects.count() == 1


def test_rows_are_entered_again_and_a_row_without_a_number_leaves_the_draft(shed, counted):
    count = counted(shed, {"box-medium-10": 18, "stand": 9})
    counting.enter(count, [(shed, "box-medium-10", "sound", 19), (shed, "stand", "sound", None)])
    assert lines(count) == {("box-medium-10", "sound"): 19}


def test_all_rows_that_are_wrong_are_named_at_once_and_none_is_entered(shed):
    count = begin(shed)
    rows = [
        (shed, "no-such-part", "sound", 1),
        (shed, "stand", "sound", -1),
        (shed, "stand", "rusty", 1),
        (shed, "box-medium-10", "sound", 3),
    ]
    with pytest.raises(Several) as refusal:
        counting.enter(count, rows)
    assert [type(problem) for problem in refusal.value.problems] == [
        UnknownPart,
        NotWhole,
        UnknownCondition,
    ]
    assert "'no-such-part' is not in the catalogue" in str(refusal.value)
    assert lines(count) == {}


def test_a_day_that_is_not_yet_is_refused(shed):
    with pytest.raises(FutureDay):
        begin(shed, day=timezone.localdate() + dt.timedelta(days=1))


def test_a_colony_is_not_counted_before_it_was(colony):
    with pytest.raises(ColonyNotStarted):
        begin(colony, day=DAY - dt.timedelta(days=1))


def test_only_a_yard_is_counted_with_its_colonies(colony):
    with pytest.raises(CountOfSeveral, match="F-01 is a colony"):
        begin(colony, with_colonies=True)


def test_what_is_outside_is_not_counted(db):
    with pytest.raises(NotAStore):
        begin(outside("scrap"))


def test_a_draft_thrown_away_keeps_its_lines_and_takes_no_more(shed, counted):
    count = counting.drop(counted(shed, {"stand": 9}))
    assert count.status == Count.Status.DROPPED and lines(count)
    with pytest.raises(CountClosed, match="is thrown away"):
        counting.enter(count, [(shed, "stand", "sound", 8)])
    with pytest.raises(CountClosed):
        counting.drop(count)
