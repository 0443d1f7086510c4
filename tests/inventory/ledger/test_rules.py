"""What the trade refuses whatever the quantity."""

import datetime as dt

import pytest

from apiary import colonies
from apiary.models import Colony
from inventory import ledger
from inventory.errors import (
    ColonyEnded,
    ColonyNotStarted,
    DoesNotFit,
    HeldBack,
    NotAColony,
    NotAStore,
    NotForHive,
    Several,
)
from inventory.ledger import Line
from inventory.ledger.rules import colony_place, inside, store
from inventory.locations import outside, place_of, store_of
from inventory.models import Location
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY


@pytest.fixture
def shed(db):
    shed = makers.make_shed()
    gear = {"box-deep-10": 5, "box-deep-8": 5, "box-deep-10-flat": 5, "sugar": 50, "foundation-deep": 9}
    makers.put(shed, {**gear, "jar": 5, "nuc-box-5": 2, "stand": 2, "frame-deep": 20})
    return shed


def place(shed, colony, *lines, day=DAY, key="k"):
    return ledger.place(source=shed, colony=colony, lines=lines, day=day, who=None, key=key)


def test_a_box_of_eight_frames_does_not_fit_a_hive_of_ten(shed):
    with pytest.raises(DoesNotFit) as refused:
        place(shed, makers.make_colony("A1"), Line("box-deep-8", 1))
    assert (refused.value.width, refused.value.wanted_width) == (8, 10)
    assert str(refused.value.onto) == "A1"


@pytest.mark.parametrize(
    ("hive_set", "part"),
    [("one-deep-8", "box-deep-10"), ("nuc-5", "box-deep-10"), ("one-deep-10", "nuc-box-5")],
)
def test_widths_never_mix(shed, hive_set, part):
    with pytest.raises(DoesNotFit):
        place(shed, makers.make_colony(hive_set=hive_set), Line(part, 1))


@pytest.mark.parametrize("part", ["stand", "frame-deep"])
def test_frames_and_stands_fit_any_hive(shed, part):
    for number, hive_set in enumerate(("one-deep-8", "one-deep-10")):
        act = place(shed, makers.make_colony(hive_set=hive_set), Line(part, 1), key=f"k{number}")
        assert [row.part.code for row in act.movements.all()] == [part]


@pytest.mark.parametrize(
    ("part", "why"),
    [
        ("box-deep-10-flat", "assemble"),
        ("sugar", "used up"),
        ("jar", "used up"),
        ("foundation-deep", "into a frame"),
    ],
)
def test_what_does_not_stand_on_a_hive_is_refused(shed, part, why):
    with pytest.raises(NotForHive, match=why):
        place(shed, makers.make_colony(), Line(part, 1))


def test_gear_held_back_is_never_placed_on_a_colony(shed):
    makers.put(shed, {"box-deep-10": 3}, condition="held back")
    with pytest.raises(HeldBack, match="inspector"):
        place(shed, makers.make_colony(), Line("box-deep-10", 1, "held back"))


def test_every_misfit_is_told_at_once(shed):
    with pytest.raises(Several) as refused:
        place(shed, makers.make_colony(), Line("box-deep-8", 1), Line("sugar", 1), Line("box-deep-10", 1))
    assert [type(problem) for problem in refused.value.problems] == [DoesNotFit, NotForHive]


def test_nothing_is_placed_on_a_colony_from_the_day_it_ended(shed):
    colony = makers.make_dead_colony(ended=dt.date(2025, 6, 1))
    with pytest.raises(ColonyEnded) as refused:
        place(shed, colony, Line("box-deep-10", 1), day=dt.date(2025, 6, 1))
    assert refused.value.ended_on == dt.date(2025, 6, 1)
    place(shed, colony, Line("box-deep-10", 1), day=dt.date(2025, 5, 31))


def test_a_colony_ended_meanwhile_is_seen_though_the_row_in_hand_is_old(shed):
    colony = makers.make_colony()
    place_of(colony)
    colonies.end(Colony.objects.get(pk=colony.pk), why="died", day=DAY, who=None)
    assert colony.ended_on is None
    with pytest.raises(ColonyEnded):
        place(shed, colony, Line("box-deep-10", 1))


def test_nothing_is_placed_on_a_colony_before_it_started(shed):
    makers.put(shed, {"box-deep-10": 1}, day=dt.date(2025, 1, 1))
    with pytest.raises(ColonyNotStarted):
        place(shed, makers.make_colony(), Line("box-deep-10", 1), day=dt.date(2025, 3, 31))


def test_a_store_a_colony_and_outside_ends_are_told_apart(shed):
    colony, scrap = makers.make_colony(), outside(Location.Kind.SCRAP)
    assert store(shed) == store_of(shed)
    assert colony_place(colony) == inside(colony) == place_of(colony)
    for ground, question, error in (
        (colony, store, NotAStore),
        (scrap, store, NotAStore),
        (shed, colony_place, NotAColony),
        (scrap, inside, NotAStore),
    ):
        with pytest.raises(error):
            question(ground)
