"""Colonies of a sheet: their gear, mothers and first days; known ones are left with a word."""

import dataclasses
import datetime as dt

import pytest

from apiary.models import Colony, ColonyEvent
from inventory.gear import Gear
from inventory.loading.bees import mothers_first, start_days, super_pieces
from inventory.sheets import ColonyRow
from inventory.sheets.examples import example
from inventory.stock import on_colony
from tests.inventory.loading.made import DAY, changed, load, told

pytestmark = pytest.mark.django_db


def test_a_colony_stands_in_the_gear_of_its_set_and_its_supers_are_drawn():
    load()
    gear = {key.part: quantity for key, quantity in on_colony(Colony.objects.get(tag="M-01")).items()}
    assert gear == {
        "box-deep-10": 2,
        "comb-deep-brood": 20,
        "floor-10": 1,
        "inner-cover-10": 1,
        "cover-10": 1,
        "box-medium-10": 2,
        "comb-medium-honey": 20,
    }


def test_a_super_is_a_box_and_combs_from_wall_to_wall():
    assert super_pieces("shallow", 8) == {"box-shallow-8": 1, "comb-shallow-honey": 8}


def test_colonies_have_their_mother_set_strength_and_first_day():
    load()
    daughter = Colony.objects.get(tag="M-02")
    assert (daughter.mother.tag, daughter.hive_set.code, daughter.origin) == ("M-01", "one-deep-10", "split")
    assert daughter.started_on == dt.date(2026, 5, 14)
    assert daughter.events.get().kind == ColonyEvent.Kind.STARTED


def test_a_mother_whose_day_is_not_told_began_no_later_than_her_daughter():
    load()
    assert Colony.objects.get(tag="M-01").started_on == dt.date(2026, 5, 14)


def test_days_go_back_through_the_generations():
    def row(tag, mother="", started_on=None):
        return ColonyRow(tag=tag, yard="y", hive_set="s", mother=mother, started_on=started_on)

    rows = [row("c", "b", dt.date(2026, 4, 1)), row("b", "a"), row("a"), row("d")]
    assert [one.tag for one in mothers_first(rows)] == ["a", "d", "b", "c"]
    assert start_days(rows, DAY) == {**dict.fromkeys("abc", dt.date(2026, 4, 1)), "d": DAY}


def test_mothers_in_a_circle_are_a_bug_here():
    rows = [
        ColonyRow(tag="a", yard="y", hive_set="s", mother="b"),
        ColonyRow(tag="b", yard="y", hive_set="s", mother="a"),
    ]
    with pytest.raises(ValueError, match="circle"):
        mothers_first(rows)


def test_new_colonies_are_added_and_known_ones_left_with_a_word():
    load()
    first, second = example().colonies
    new = ColonyRow(tag="M-03", yard="mill-field", hive_set="nuc-5", mother="M-01")
    rows = (dataclasses.replace(first, yard="shed", strength="weak"), second, new)
    loaded = load(changed(colonies=rows), digest="b")
    assert told(loaded, "colonies") == [
        (
            "M-01",
            "as it is",
            "by the books it stands in Mill Field (invented), not Shed and is strong, not weak: "
            "left so, book what happened instead",
        ),
        ("M-02", "as it is", ""),
        ("M-03", "new", "Mill Field (invented), nuc, 5 frames"),
    ]
    assert Colony.objects.get(tag="M-01").yard.code == "mill-field"
    assert on_colony(Colony.objects.get(tag="M-03")) == {
        Gear(part="comb-deep-brood"): 5,
        Gear(part="nuc-box-5"): 1,
    }


def test_another_set_of_a_known_colony_is_told_too():
    load()
    first = dataclasses.replace(example().colonies[0], hive_set="one-deep-10")
    loaded = load(changed(colonies=(first,)), digest="b")
    assert "stands in two deeps, 10 frames, not one deep, 10 frames" in told(loaded, "colonies")[0][2]


def test_a_hive_set_no_gear_set_fills_starts_the_colony_without_gear_and_says_so():
    own = Colony._meta.get_field("hive_set").related_model.objects.create(
        code="own", name="own", deep_boxes=1
    )
    row = ColonyRow(tag="X", yard="shed", hive_set=own.code)
    loaded = load(changed(colonies=(row,)))
    assert told(loaded, "colonies")[0][2].endswith("no gear set says what it stands in")
    assert on_colony(Colony.objects.get(tag="X")) == {}
