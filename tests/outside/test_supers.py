"""When a box is added and how many are wanted: the projection against the trade's rules."""

import math

import pytest

from inventory.gear import Depth
from planner.projection.colonies import standing_colonies
from planner.projection.flow import FlowClass, class_gain
from planner.projection.gear_of_season import culled_combs
from planner.projection.project import project
from planner.season.calendar import piece_of
from planner.season.questions import question_of
from tests.outside import seasons


def season(*, gain_lb, **given):
    told = seasons.operation(colonies=30, gain_lb=gain_lb)
    assumptions = seasons.answers(told, target_colonies=30, **given)
    return told, assumptions, project(told, assumptions, seasons.average(told, assumptions))


def test_the_next_super_goes_on_when_the_one_below_is_half_to_two_thirds_full():
    """Club teaching, second hand: half to two thirds; at least half full (common practice, no source)."""
    assert 0.5 <= question_of("fill_share").default <= 2 / 3


@pytest.mark.parametrize("share", [0.5, 2 / 3])
def test_a_second_super_waits_until_the_first_is_filled_to_the_rule(share):
    """The same rule on a colony visited every week: at the week of the second super the first is filled so far, the
    week before it was not."""
    told, assumptions, projected = season(gain_lb=90, fill_share=share, circuit_days=7)
    first, second = [need for need in projected.supers if need.number <= 2]
    yard = told.yards[1]
    piece = piece_of(assumptions.start, assumptions.weeks, yard.windows[0])
    bees = FlowClass(yard=yard.code, strength="strong", width=10, colonies=(30,) * 52, born=0)
    gained = class_gain(bees, piece, 90)
    week = second.first - piece.first
    assert first.first <= piece.first
    assert gained[week] >= share * assumptions.honey_medium_lb > gained[week - 1]


@pytest.mark.parametrize("gain_lb", [30, 60, 100, 150])
def test_supers_wanted_are_the_crop_over_what_one_holds(gain_lb):
    """Derived: ceil(yield / honey per super) with one extraction a season; the last one only if it is worth a trip."""
    _, assumptions, projected = season(gain_lb=gain_lb)
    wanted = max(need.number for need in projected.supers)
    rest = gain_lb % assumptions.honey_medium_lb
    assert wanted == math.ceil(gain_lb / assumptions.honey_medium_lb) - (0 < rest < 4)


def test_an_active_colony_has_five_bodies_in_a_strong_flow():
    """Farrar, USDA Circular 702, 1944: two bodies in winter, five and more in the active season, ten frames."""
    told, _, projected = season(gain_lb=100)
    (facts,) = told.sets
    in_winter = sum(facts.boxes.values())
    assert in_winter >= 2
    assert in_winter + max(need.number for need in projected.supers) >= 5


def test_ten_extracting_combs_are_not_needed_in_a_ten_frame_super():
    """USDA, The Home Apiary, part 3: eight combs spaced; nine and ten are common practice."""
    assert {value for value, _ in question_of("combs_in_super").choices} == {"8", "9", "10"}


def test_two_combs_of_ten_a_year_renew_a_brood_nest_in_five_years():
    """Extension commonplace: every 3 to 5 years, two of ten frames a year."""
    told, assumptions, _ = season(gain_lb=60)
    standings = standing_colonies(told, assumptions, seasons.average(told, assumptions))
    combs = 30 * told.sets[0].gear["comb-deep-brood"]
    assert combs / culled_combs(told, assumptions, standings)[Depth.DEEP] == pytest.approx(5)


def test_the_second_brood_box_goes_on_before_the_flow():
    """Room in the brood boxes holds off swarming, supers do not (common practice, no source): on a single, the second
    box is asked for before the first super."""
    told = seasons.operation(colonies=30, gain_lb=60, hive_set="one-deep-10")
    assumptions = seasons.answers(told, target_colonies=30)
    projected = project(told, assumptions, seasons.average(told, assumptions))
    (box,) = projected.second_boxes
    assert box.colonies == 30
    assert box.week <= min(need.first for need in projected.supers)


def test_mouse_guards_go_on_from_late_summer_and_excluders_under_the_first_super():
    """Guards September to October (club calendars, second hand); the excluder comes with the first super (common
    practice, no source)."""
    _, assumptions, projected = season(gain_lb=60)
    guards = [gear for gear in projected.small_gear if gear.kind == "guard"]
    assert 35 <= assumptions.guard_week <= 44
    assert sum(gear.colonies for gear in guards) == 30
    excluder = next(gear for gear in projected.small_gear if gear.kind.startswith("excluder"))
    first = next(need for need in projected.supers if need.number == 1)
    assert (excluder.first, excluder.colonies) == (first.first, first.colonies)
