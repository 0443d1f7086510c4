"""The catalogue against published dimensions and the trade's usual hive."""

from decimal import Decimal

import pytest

from apiary.models import HiveSet
from inventory.catalogue import ensure_catalogue
from inventory.gear import Comb, CombUse, Depth, Kind
from inventory.models import GearSet, Part, Recipe

pytestmark = pytest.mark.django_db
DEPTHS = ("deep", "medium", "shallow")


@pytest.fixture(autouse=True)
def catalogue(db):
    ensure_catalogue()


def part(code):
    return Part.objects.get(code=code)


def contents(code):
    return {line.part.code: line.quantity for line in GearSet.objects.get(code=code).lines.all()}


def test_a_second_call_adds_nothing_and_keeps_the_keepers_price():
    Part.objects.filter(code="stand").update(list_price_cents=1)
    assert ensure_catalogue() == 0
    assert part("stand").list_price_cents == 1


def test_a_row_taken_away_comes_back():
    GearSet.objects.filter(code="full-hive-8").delete()
    assert ensure_catalogue() == 1
    assert contents("full-hive-8")["box-deep-8"] == 2


def test_box_heights_are_those_in_print():
    """MacFawn, Bee Culture, winter 2020: 9 5/8, 6 5/8, 5 11/16 in."""
    printed = {"deep": "9.625", "medium": "6.625", "shallow": "5.6875"}
    for depth, height in printed.items():
        for width in (10, 8):
            assert part(f"box-{depth}-{width}").height_in == Decimal(height)


def test_the_deep_frame_is_that_of_the_farmers_bulletin():
    """Phillips, Bees, USDA Farmers' Bulletin 447 (1911): 9 1/8 by 17 5/8 in."""
    frame = part("frame-deep")
    assert (frame.height_in, frame.length_in) == (Decimal("9.125"), Decimal("17.625"))


@pytest.mark.parametrize("depth", DEPTHS)
def test_a_frame_leaves_bee_space_in_its_box(depth):
    """Teffera and Sahile 2011: 7 and 10 mm are good bee space; box less frame may hold two of them."""
    gap = part(f"box-{depth}-10").height_in - part(f"frame-{depth}").height_in
    assert Decimal("0.27") <= gap <= 2 * Decimal("0.394")


def test_ten_frames_fit_between_the_walls():
    """Inside width = outside less two boards of 3/4 in (common practice, no source)."""
    inside = part("box-deep-10").width_in - Decimal("1.5")
    assert inside == Decimal("14.75")
    assert 10 * part("frame-deep").width_in <= inside
    assert 8 * part("frame-deep").width_in <= part("box-deep-8").width_in - Decimal("1.5")


def test_volumes_of_boxes_are_in_the_ratio_of_their_heights():
    """Inner volume 2,609, 1,796, 1,541 cubic inches, from the printed heights and 18 3/8 by 14 3/4 in inside."""
    volumes = {d: Decimal("18.375") * Decimal("14.75") * part(f"box-{d}-10").height_in for d in DEPTHS}
    assert [round(volumes[d]) for d in DEPTHS] == [2609, 1796, 1541]


def test_a_deep_comb_carries_the_wax_of_one_frame():
    """Bogdanov, Beeswax book, ch. 2: about 100 g of wax a frame, 0.22 lb."""
    assert part("comb-deep-honey").tare_lb - part("frame-deep").tare_lb == Decimal("0.22")


@pytest.mark.parametrize(("width", "frames"), [(10, 40), (8, 32)])
def test_the_full_hive_holds_as_many_frames_as_sheets(width, frames):
    """Two deeps and two supers, frames with foundation for every box (common practice, no source)."""
    gear = contents(f"full-hive-{width}")
    assert gear["frame-deep"] + gear["frame-medium"] == frames
    assert gear["foundation-deep"] + gear["foundation-medium"] == frames
    assert {gear[f"floor-{width}"], gear[f"inner-cover-{width}"], gear[f"cover-{width}"]} == {1}


def test_no_gear_set_mixes_widths():
    for gear_set in GearSet.objects.prefetch_related("lines__part"):
        assert len({line.part.width for line in gear_set.lines.all()} - {None}) == 1


def test_every_hive_set_has_its_gear_with_a_frame_for_every_place():
    for hive_set in HiveSet.objects.all():
        gear = {line.part: line.quantity for line in GearSet.objects.get(hive_set=hive_set.code).lines.all()}
        frames = sum(n for piece, n in gear.items() if piece.kind == Kind.FRAME)
        boxes = hive_set.deep_boxes + hive_set.medium_boxes + hive_set.shallow_boxes
        assert frames == boxes * hive_set.width


def test_recipes_make_what_they_are_called_after():
    for recipe in Recipe.objects.prefetch_related("lines__part"):
        made = [line.part for line in recipe.lines.all() if line.makes]
        taken = [line.part for line in recipe.lines.all() if line.takes]
        assert len(made) == 1
        assert made[0].depth in recipe.code
        assert all(piece.depth == made[0].depth and piece.width == made[0].width for piece in taken)


def test_every_part_speaks_the_words_of_gear_and_names_its_sources():
    for piece in Part.objects.all():
        assert Kind(piece.kind)
        assert not piece.depth or Depth(piece.depth)
        assert not piece.comb or Comb(piece.comb)
        assert not piece.comb_use or CombUse(piece.comb_use)
        assert piece.list_price > 0
        assert "list price: invented" in piece.source
