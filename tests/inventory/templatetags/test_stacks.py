"""Stacks of a yard out of the books: who is drawn, in how few questions, and the words beside the picture."""

import datetime as dt

import pytest

from inventory import ledger
from inventory.gear import Condition
from inventory.ledger import Line
from inventory.templatetags.stacks import colony_stack, frames_in, gear_on, standing_in, yard_stacks
from tests.makers import fresh_key, make_colony, make_dead_colony, make_yard, put

pytestmark = pytest.mark.django_db
DAY = dt.date(2025, 7, 1)


def test_a_whole_yard_is_two_questions(django_assert_num_queries):
    yard = make_yard()
    for number in range(12):
        make_colony(f"F-{number:02}", yard=yard, gear=True)
    with django_assert_num_queries(2):
        stacks = yard_stacks(yard, as_of=DAY)["stacks"]
    assert len(stacks) == 12
    assert stacks[0]["lines"] == ["2 deep"]


def test_a_deadout_that_still_holds_gear_is_drawn_closed():
    yard = make_yard()
    make_dead_colony(yard=yard, gear=True)
    (stack,) = yard_stacks(yard, as_of=DAY)["stacks"]
    assert stack["ended"] == "Dead"
    assert stack["hive"].entrance == "closed"


def test_the_sum_tells_the_living_from_those_that_ended():
    yard = make_yard()
    make_colony(yard=yard, gear=True)
    assert yard_stacks(yard, as_of=DAY)["sum"] == "1 living"
    make_dead_colony(yard=yard, gear=True)
    assert yard_stacks(yard, as_of=DAY)["sum"] == "1 ended, 1 living"


def test_a_deadout_worked_off_is_gone():
    yard = make_yard()
    make_dead_colony(yard=yard)
    assert standing_in(yard, on=DAY) == []


def test_colonies_of_other_yards_are_not_drawn():
    make_colony("E-1")
    yard = make_yard()
    here = make_colony("F-1", yard=yard)
    assert standing_in(yard, on=DAY) == [here]


def test_the_first_of_each_row_of_eight_carries_the_staff():
    yard = make_yard()
    for number in range(9):
        make_colony(f"F-{number}", yard=yard, gear=True)
    stacks = yard_stacks(yard, as_of=DAY)["stacks"]
    assert [number for number, stack in enumerate(stacks) if stack.get("staff")] == [0, 8]


def test_staff_and_stack_share_the_ground():
    yard = make_yard()
    make_colony(yard=yard, gear=True)
    (stack,) = yard_stacks(yard, as_of=DAY)["stacks"]
    feet = [tick for tick in stack["staff"]["ticks"] if tick["foot"]]
    assert feet[0] == {"y": stack["drawing"].height, "foot": True, "label": 0}
    assert feet[1]["y"] == stack["drawing"].height - 12 * 16
    assert feet[1]["label"] == 12


def test_the_key_names_only_what_is_drawn():
    yard = make_yard()
    make_colony(yard=yard, gear=True)
    assert [entry["word"] for entry in yard_stacks(yard, as_of=DAY)["key"]] == ["drawn comb"]


def test_held_gear_is_read_as_held():
    yard = make_yard()
    colony = make_colony(yard=yard)
    gear = {"box-deep-10": 1, "comb-deep-brood": 10}
    put(colony, gear)
    lines = [Line(code, quantity) for code, quantity in gear.items()]
    ledger.mark(at=colony, lines=lines, becomes=Condition.HELD, day=DAY, who=None, key=fresh_key())
    (stack,) = yard_stacks(yard, as_of=DAY)["stacks"]
    assert stack["lines"] == ["1 deep", "all held back"]


def test_a_colony_has_a_row_for_each_balloon():
    context = colony_stack(make_colony(gear=True))
    assert [row["name"] for row in context["rows"]] == ["outer and inner cover", "deep", "deep", "floor"]
    assert [row["number"] for row in context["rows"]] == [1, 2, 3, 4]
    assert context["rows"][1]["words"] == "10 drawn"


def test_what_holds_no_frames_says_nothing_of_them():
    assert frames_in(None) == ""


def test_gear_of_a_colony_is_what_the_book_has_on_it():
    colony = make_colony(gear=True)
    assert {row.part.code: row.quantity for row in gear_on([colony])[colony.pk]} == {
        "box-deep-10": 2,
        "comb-deep-brood": 20,
        "floor-10": 1,
        "inner-cover-10": 1,
        "cover-10": 1,
    }
