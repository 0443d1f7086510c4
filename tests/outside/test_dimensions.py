"""The catalogue's boxes, frames and sheets against printed dimensions, and against each other.

Inches. Inside = outside less two boards of 3/4 in. Where a figure is told from memory the check says so.
"""

import json
from decimal import Decimal

import pytest

from inventory.catalogue import CATALOGUE
from planner.season.questions import question_of

BOARD = Decimal("0.75")
DEPTHS = ("deep", "medium", "shallow")
WIDTHS = (10, 8)


def inches(text):
    """ "19 7/8" -> 19.875"""
    whole, _, part = text.partition(" ")
    over, _, under = part.partition("/")
    return Decimal(whole) + (Decimal(over) / Decimal(under) if under else 0)


@pytest.fixture(scope="module")
def parts():
    rows = json.loads(CATALOGUE.read_text(encoding="utf-8"))["parts"]
    sized = ("length_in", "width_in", "height_in", "tare_lb")
    return {row["code"]: row | {key: Decimal(row[key]) for key in sized if key in row} for row in rows}


def inside(box):
    """Inside length, width and height of a box."""
    return box["length_in"] - 2 * BOARD, box["width_in"] - 2 * BOARD, box["height_in"]


def volume(box):
    length, width, height = inside(box)
    return float(length * width * height)


@pytest.mark.parametrize(
    ("depth", "height"), [("deep", "9 5/8"), ("medium", "6 5/8"), ("shallow", "5 11/16")]
)
@pytest.mark.parametrize("width", WIDTHS)
def test_a_box_is_as_deep_as_printed(depth, height, width, parts):
    """MacFawn, Bee Culture, winter 2020."""
    assert parts[f"box-{depth}-{width}"]["height_in"] == inches(height)
    assert parts[f"box-{depth}-{width}-flat"]["height_in"] == inches(height)


def test_the_shallow_lies_among_the_heights_in_print(parts):
    """5 5/8, 5 3/4 and 5 7/8 in are printed as well as 5 11/16 (several pages): all within 3/16."""
    height = parts["box-shallow-10"]["height_in"]
    assert all(abs(height - inches(other)) <= inches("0 3/16") for other in ("5 5/8", "5 3/4", "5 7/8"))


def test_a_ten_frame_box_is_19_7_8_by_16_1_4_outside_and_18_3_8_by_14_3_4_inside(parts):
    """General encyclopedia, "Honey super" (second hand); inside derived from boards of 3/4 in."""
    for depth in DEPTHS:
        box = parts[f"box-{depth}-10"]
        assert (box["length_in"], box["width_in"]) == (inches("19 7/8"), inches("16 1/4"))
        assert inside(box)[:2] == (inches("18 3/8"), inches("14 3/4"))


def test_an_eight_frame_box_is_narrower_and_as_long(parts):
    """13 3/4 to 14 1/8 in wide (from memory: the trade varies)."""
    for depth in DEPTHS:
        box = parts[f"box-{depth}-8"]
        assert inches("13 3/4") <= box["width_in"] <= inches("14 1/8")
        assert box["length_in"] == parts[f"box-{depth}-10"]["length_in"]


def test_the_deep_frame_is_9_1_8_by_17_5_8(parts):
    """Phillips, Bees, USDA Farmers' Bulletin 447, 1911."""
    frame = parts["frame-deep"]
    assert (frame["height_in"], frame["length_in"]) == (inches("9 1/8"), inches("17 5/8"))


@pytest.mark.parametrize(("depth", "gap"), [("deep", "0 1/2"), ("medium", "0 3/8"), ("shallow", "0 5/16")])
def test_a_frame_leaves_the_printed_room_in_its_box(depth, gap, parts):
    """Deep from Phillips (1911) and MacFawn (2020); medium 6 1/4 and shallow 5 3/8 from memory."""
    for width in WIDTHS:
        room = parts[f"box-{depth}-{width}"]["height_in"] - parts[f"frame-{depth}"]["height_in"]
        assert room == inches(gap)


def test_a_frame_leaves_a_bee_space_at_each_end(parts):
    """Teffera and Sahile (2011): 7 and 10 mm do, 14 mm does not. A frame of 17 5/8 in in a box of 18 3/8."""
    length, _, _ = inside(parts["box-deep-10"])
    space_mm = float(length - parts["frame-deep"]["length_in"]) / 2 * 25.4
    assert 7 <= space_mm <= 10


@pytest.mark.parametrize("width", WIDTHS)
def test_as_many_frames_as_the_width_says_stand_side_by_side_with_room_to_pry(width, parts):
    """End bar 1 3/8 in (USDA drawings, from memory): ten take 13 3/4 of 14 3/4 in, eleven do not go in."""
    for depth in DEPTHS:
        bar, (_, across, _) = parts[f"frame-{depth}"]["width_in"], inside(parts[f"box-{depth}-{width}"])
        assert bar == inches("1 3/8")
        assert width * bar + inches("0 3/8") <= across
        assert 11 * bar > across


@pytest.mark.parametrize(
    ("depth", "cubic_inches", "litres"),
    [("deep", 2609, 42.7), ("medium", 1796, 29.4), ("shallow", 1541, 25.3)],
)
def test_a_ten_frame_box_holds_what_its_printed_sides_give(depth, cubic_inches, litres, parts):
    """Derived from the encyclopedia's footprint and the heights of MacFawn (2020)."""
    held = volume(parts[f"box-{depth}-10"])
    assert round(held) == cubic_inches
    assert round(held * 2.54**3 / 1000, 1) == pytest.approx(litres, abs=0.11)


def test_a_super_holds_honey_by_its_volume(parts):
    """Volume ratios 0.688 and 0.591 (derived as above); full supers 80-90, 50-60, 35-40 lb gross (from memory)."""
    deep = question_of("honey_deep_lb").default
    for depth, ratio in (("medium", 0.688), ("shallow", 0.591)):
        assert volume(parts[f"box-{depth}-10"]) / volume(parts["box-deep-10"]) == pytest.approx(
            ratio, abs=5e-4
        )
        assert question_of(f"honey_{depth}_lb").default / deep == pytest.approx(ratio, rel=0.02)


def test_ten_deep_frames_hold_what_a_deep_super_is_said_to(parts):
    """Bogdanov, Beeswax, ch. 2: 1.8 to 3.8 kg (4.0 to 8.4 lb) a deep frame; Comstock (1905): about 5 lb."""
    a_frame = question_of("honey_deep_lb").default / 10
    assert 4.0 <= a_frame <= 8.4
    assert a_frame >= 5


@pytest.mark.parametrize("depth", DEPTHS)
def test_a_sheet_fits_in_its_frame(depth, parts):
    """8 1/2, 5 5/8 and 4 3/4 by 16 3/4 in (from memory)."""
    printed = {"deep": "8 1/2", "medium": "5 5/8", "shallow": "4 3/4"}
    sheet, frame = parts[f"foundation-{depth}"], parts[f"frame-{depth}"]
    assert (sheet["height_in"], sheet["length_in"]) == (inches(printed[depth]), inches("16 3/4"))
    assert sheet["height_in"] < frame["height_in"]
    assert sheet["length_in"] < frame["length_in"]


def test_a_deep_frames_side_bounds_its_comb(parts):
    """Outer rectangle 160.8 sq in (derived from Phillips, 1911); comb 135 sq in a side (state grading guides, second
    hand): the sheet lies between."""
    frame, sheet = parts["frame-deep"], parts["foundation-deep"]
    outer = float(frame["height_in"] * frame["length_in"])
    assert round(outer, 1) == 160.8
    assert 135 < float(sheet["height_in"] * sheet["length_in"]) < outer


def test_widths_are_never_mixed_and_frames_fit_both(parts):
    """Eight and ten do not mix (common practice, no source): boxes, floors and covers have a width, frames none."""
    for part in parts.values():
        if (
            part["kind"] in ("box", "floor", "inner cover", "cover", "excluder")
            and part["code"] != "pallet-4"
        ):
            assert part["width"] in WIDTHS, part["code"]
        if part["kind"] in ("frame", "foundation"):
            assert "width" not in part, part["code"]


def test_every_part_of_the_catalogue_names_its_source(parts):
    assert [code for code, part in parts.items() if not part.get("source")] == []


def test_a_stand_lifts_a_hive_eighteen_inches(parts):
    """Common practice, no source."""
    assert parts["stand"]["height_in"] == 18
