"""A load on paper: lines add up to the load, frames ride in boxes, honey weighs, held gear is told."""

from decimal import Decimal

import pytest

from inventory.field_sheets.loads import load_list
from inventory.gear import Condition
from inventory.load_sums import weigh
from inventory.pieces import Row
from tests import makers

pytestmark = pytest.mark.django_db


def row(code, condition=Condition.SOUND):
    return Row(part=makers.part(code), condition=condition)


def test_lines_add_up_to_the_load_as_the_act_weighs_it():
    boxes, combs = row("box-medium-10"), row("comb-medium-honey")
    load = load_list([("Creek", [(boxes, 6, 0), (combs, 70, 0)]), ("Hill", [(row("sugar"), 50, 0)])])
    whole = weigh([(boxes.part, 6), (combs.part, 70), (makers.part("sugar"), 50)]).load
    assert (load.weighed.load.lb, load.weighed.load.cubic_ft) == (whole.lb, whole.cubic_ft)
    assert sum(stop.lb for stop in load.stops) == whole.lb
    assert sum(stop.cubic_ft for stop in load.stops) == whole.cubic_ft


def test_frames_take_no_room_as_far_as_boxes_of_their_depth_stand_before_them():
    load = load_list([("Creek", [(row("box-medium-10"), 6, 0), (row("comb-medium-honey"), 60, 0)])])
    assert [line.in_boxes for line in load.stops[0].lines] == [False, True]
    more = load_list([("Creek", [(row("box-medium-10"), 6, 0), (row("comb-medium-honey"), 61, 0)])])
    assert more.stops[0].lines[1].cubic_ft > 0


def test_boxes_full_of_honey_weigh_what_a_full_box_weighs_less_its_combs():
    """A full medium is 60 lb, the upper figure of common extension teaching, from memory."""
    box, comb = makers.part("box-medium-10"), makers.part("comb-medium-honey")
    load = load_list([("Creek", [(row(box.code), 3, 2)])])
    expected = 3 * box.tare_lb + 2 * (Decimal(60) - box.tare_lb - 10 * comb.tare_lb)
    assert load.stops[0].lines[0].lb == expected
    assert load.stops[0].lines[0].full == 2


def test_held_back_gear_on_it_is_known():
    sound = load_list([("Creek", [(row("box-deep-10"), 1, 0)])])
    held = load_list([("Creek", [(row("box-deep-10", Condition.HELD), 1, 0)])])
    assert (sound.has_held, held.has_held) == (False, True)


def test_a_stop_at_which_nothing_is_dropped_is_left_out_and_units_are_told():
    load = load_list([("Creek", []), ("Hill", [(row("sugar"), 50, 0), (row("box-deep-10"), 1, 0)])])
    assert [stop.place for stop in load.stops] == ["Hill"]
    assert [line.unit for line in load.stops[0].lines] == ["lb", ""]
