"""What a set takes agrees with the catalogue, and with the usual hive where no gear set names it."""

import pytest

from apiary.models import HiveSet
from inventory.gear import Comb
from inventory.models import GearSet
from inventory.yardwork.outfit import frame_of, outfit_of
from inventory.yardwork.refusals import NoOutfit
from tests import makers

pytestmark = pytest.mark.django_db


def codes(outfit):
    return {part.code: number for part, number in outfit.pieces.items()}


def test_the_gear_set_tells_what_a_set_takes():
    outfit = outfit_of(makers.make_hive_set("two-deeps-10"))
    assert codes(outfit) == {"box-deep-10": 2, "floor-10": 1, "inner-cover-10": 1, "cover-10": 1}
    assert (outfit.frames, outfit.depth) == ({"deep": 20}, "deep")


@pytest.mark.parametrize(
    "code", ["one-deep-10", "two-deeps-10", "deep-and-medium-10", "three-mediums-10", "two-deeps-8", "nuc-5"]
)
def test_a_set_without_a_gear_set_takes_the_same_by_its_boxes(code):
    hive_set = makers.make_hive_set(code)
    told = outfit_of(hive_set)
    GearSet.objects.filter(hive_set=code).delete()
    assert outfit_of(hive_set) == told


def test_the_brood_box_is_the_deepest():
    outfit = outfit_of(makers.make_hive_set("deep-and-medium-10"))
    assert (outfit.depth, outfit.frames) == ("deep", {"deep": 10, "medium": 10})


def test_a_set_on_pallets_under_a_migratory_cover_has_no_floor_and_no_inner_cover():
    makers.make_catalogue()
    hive_set = HiveSet.objects.create(
        code="pallet-8", name="pallet, 8 frames", width=8, deep_boxes=1, base="pallet", cover="migratory"
    )
    assert codes(outfit_of(hive_set)) == {"box-deep-8": 1, "cover-migratory-8": 1}


def test_a_width_the_catalogue_lacks_is_told():
    makers.make_catalogue()
    hive_set = HiveSet.objects.create(code="twelve", name="twelve frames", width=12, deep_boxes=1)
    with pytest.raises(NoOutfit, match="no deep box for 12 frames for the set twelve frames"):
        outfit_of(hive_set)


def test_frames_fill_up_with_foundation_or_drawn_brood_comb():
    makers.make_catalogue()
    assert frame_of("deep", Comb.FOUNDATION).code == "frame-deep-foundation"
    assert frame_of("medium", Comb.DRAWN).code == "comb-medium-brood"
    with pytest.raises(NoOutfit):
        frame_of("jumbo", Comb.DRAWN)
