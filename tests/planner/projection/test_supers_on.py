"""Supers that stand on hives already."""

from dataclasses import replace

from planner.projection.supers_on import supers_on
from planner.season.operation import ColonyGroup
from tests.planner.operations import operation


def test_boxes_beyond_the_colonies_own_set_are_supers_on_average_a_colony(answers):
    whole = operation()
    own = whole.sets_by_code["one-deep-10"].gear
    gear = {part: 4 * pieces for part, pieces in own.items()} | {"box-medium-10": 6}
    group = ColonyGroup(yard="alder", hive_set="one-deep-10", strength="strong", colonies=4, gear=gear)
    assert supers_on(replace(whole, colonies=(group,)), answers()) == {("alder", "strong", 10): 1.5}


def test_hives_without_any_super_are_left_out(answers):
    assert supers_on(operation(), answers()) == {}
