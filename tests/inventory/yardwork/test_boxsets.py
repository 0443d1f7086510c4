"""The keeper's supers and brood boxes, what fits where, and what a hive set becomes with one more."""

import pytest

from apiary.models import HiveSet
from inventory.errors import UnknownBox
from inventory.gear import CombUse
from inventory.models import GearSet
from inventory.yardwork.boxsets import (
    best_for,
    brood_box_of,
    brood_boxes,
    frames_for,
    set_with,
    super_of,
    supers,
)
from tests import makers

pytestmark = pytest.mark.django_db


@pytest.fixture(autouse=True)
def catalogue(db):
    makers.make_catalogue()


def hive(code):
    return HiveSet.objects.get(code=code)


def test_supers_are_the_gear_sets_of_that_name():
    told = [(one.code, one.box.code, one.frames, one.use) for one in supers()]
    assert told == [
        ("super-medium-10", "box-medium-10", 10, CombUse.HONEY),
        ("super-medium-8", "box-medium-8", 8, CombUse.HONEY),
    ]


def test_a_keeper_adds_a_super_of_their_own():
    nine = GearSet.objects.create(code="super-shallow-10", name="shallow super, nine frames")
    nine.lines.create(part=makers.part("box-shallow-10"), quantity=1)
    nine.lines.create(part=makers.part("frame-shallow-foundation"), quantity=9)
    assert (super_of("super-shallow-10").frames, super_of("super-shallow-10").depth) == (9, "shallow")


def test_a_gear_set_without_a_box_is_no_super():
    GearSet.objects.create(code="super-nothing", name="a name alone")
    assert "super-nothing" not in [one.code for one in supers()]


def test_brood_boxes_are_told_or_go_from_wall_to_wall():
    told = {one.code: (one.box.code, one.frames) for one in brood_boxes()}
    assert told == {
        "brood-box-deep-10": ("box-deep-10", 10),
        "brood-box-deep-8": ("box-deep-8", 8),
        "brood-box-medium-10": ("box-medium-10", 10),
    }


@pytest.mark.parametrize("one_of", [super_of, brood_box_of])
def test_a_box_that_is_none_of_the_keepers_is_refused(one_of):
    with pytest.raises(UnknownBox, match="choose one of"):
        one_of("super-giant-12")


def test_widths_never_mix_and_a_nuc_takes_none():
    ten = super_of("super-medium-10")
    fits = {code: ten.fits(hive(code)) for code in ("two-deeps-10", "one-deep-8", "nuc-5")}
    assert fits == {"two-deeps-10": True, "one-deep-8": False, "nuc-5": False}
    double = HiveSet.objects.create(code="nuc-10", name="double nuc", width=10, deep_boxes=1, is_nuc=True)
    assert not ten.fits(double)


def test_the_box_that_fits_most_hives_is_offered():
    eight, ten = hive("one-deep-8"), hive("two-deeps-10")
    assert best_for(supers(), [eight, eight, ten]).width == 8
    assert best_for(supers(), [eight, ten]).width == 10
    assert best_for([], [ten]) is None


def test_treated_comb_goes_under_no_honey():
    # common practice, no source: comb that was on a colony in treatment stays in the brood nest
    honey, brood = super_of("super-medium-10"), brood_box_of("brood-box-deep-10")
    assert [part.code for part in honey.combs(frames_for(honey))] == ["comb-medium-honey"]
    assert [part.code for part in brood.combs(frames_for(brood))] == [
        "comb-deep-brood",
        "comb-deep-brood-treated",
    ]
    assert honey.foundation(frames_for(honey)).code == "frame-medium-foundation"


@pytest.mark.parametrize(
    ("before", "box", "after"),
    [
        ("one-deep-10", "brood-box-deep-10", "two-deeps-10"),
        ("one-deep-10", "brood-box-medium-10", "deep-and-medium-10"),
        ("one-deep-8", "brood-box-deep-8", "two-deeps-8"),
        ("two-deeps-10", "brood-box-deep-10", None),
    ],
)
def test_a_set_with_one_more_box_is_another_of_the_keepers_sets_or_none(before, box, after):
    grown = set_with(hive(before), brood_box_of(box), 1)
    assert (grown and grown.code) == after
