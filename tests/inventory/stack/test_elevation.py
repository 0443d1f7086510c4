"""The elevation is to scale: heights, widths and places in 1/16 in, against published dimensions."""

import re
from itertools import pairwise

import pytest

from inventory.stack import Box, Hive, draw, height_of
from inventory.stack.elevation import COVER, COVER_LAP, FLOOR, STAND_TALL, crosshatch, places


def shapes(hive, css):
    return [shape.d for shape in draw(hive).shapes if shape.css == css]


def test_boxes_are_as_deep_as_they_are_built():
    # deep 9 5/8, medium 6 5/8, shallow 5 11/16 in: Langstroth hive plans in common use (from memory)
    tall = {depth: Box(depth=depth, width=10).tall / 16 for depth in ("deep", "medium", "shallow")}
    assert tall == {"deep": 9.625, "medium": 6.625, "shallow": 5.6875}


def test_a_ten_frame_box_is_sixteen_and_a_quarter_wide():
    # 16 1/4 in over all: the same plans (from memory)
    assert Box(depth="deep", width=10).wide / 16 == 16.25


def test_a_box_of_another_standard_keeps_its_own_measures():
    box = Box(depth="deep", width=11, wide=300, tall=160)
    assert (box.wide, box.tall) == (300, 160)


def test_the_hive_is_the_sum_of_what_it_is_made_of():
    hive = Hive(boxes=(Box(depth="deep", width=10), Box(depth="medium", width=10)))
    assert height_of(hive) == STAND_TALL + FLOOR + 154 + 106 + COVER - COVER_LAP + 2


def test_excluder_and_feeder_add_their_own_height():
    boxes = (Box(depth="deep", width=10),)
    plain = height_of(Hive(boxes=boxes))
    assert height_of(Hive(boxes=boxes, excluder_on=1)) == plain + 10
    assert height_of(Hive(boxes=boxes, feeder=True)) == plain + 54


def test_pieces_stand_on_each_other_without_a_gap():
    hive = Hive(boxes=(Box(depth="deep", width=10),) * 2, excluder_on=1, feeder=True)
    pieces = draw(hive).pieces
    assert all(above.bottom == below.top for above, below in pairwise(pieces))
    assert pieces[-1].bottom == height_of(hive)


def test_ten_frames_stand_at_a_pitch_of_a_frame():
    # frames are 1 3/8 in wide, 22/16: Langstroth's spacing (from memory)
    across = places(Box(depth="deep", width=10, drawn=10))
    assert {b - a for a, b in pairwise(across)} == {22}


def test_nine_spaced_combs_take_the_width_of_ten():
    ten = places(Box(depth="medium", width=10, drawn=10))
    nine = places(Box(depth="medium", width=10, drawn=9))
    assert len(nine) == 9
    assert nine[1] - nine[0] > ten[1] - ten[0]
    assert nine[0] - 52 < 22 and 288 - nine[-1] < 22


def test_six_frames_are_not_spread_over_ten_places():
    across = places(Box(depth="deep", width=10, drawn=6))
    assert across[1] - across[0] == 22


def test_one_path_a_state_and_box():
    hive = Hive(boxes=(Box(depth="deep", width=10, drawn=6, foundation=4),))
    (combs,) = shapes(hive, "drawn")
    assert combs.count("M") == 6
    assert len(shapes(hive, "topbar")) == 1
    assert shapes(hive, "topbar")[0].count("M") == 10


def test_held_boxes_are_hatched_and_show_no_frames():
    hive = Hive(boxes=(Box(depth="deep", width=10, drawn=10, held=True),))
    assert shapes(hive, "drawn") == []
    assert len([d for d in shapes(hive, "thin") if d.count("L") > 10]) == 1


def test_hatching_stays_inside_its_box():
    numbers = [int(n) for n in re.findall(r"-?\d+", crosshatch(40, 100, 260, 154))]
    assert all(40 <= x <= 300 for x in numbers[::2])
    assert all(100 <= y <= 254 for y in numbers[1::2])


@pytest.mark.parametrize(("entrance", "bars"), [("open", 0), ("reduced", 2), ("closed", 2)])
def test_the_entrance_shows_how_far_it_is_open(entrance, bars):
    (drawn,) = shapes(Hive(entrance=entrance), "solid thin") or [""]
    assert drawn.count("M") == bars


def test_a_closed_entrance_leaves_no_gap():
    (bars,) = shapes(Hive(entrance="closed"), "solid thin")
    lefts = [int(left) for left in re.findall(r"M(\d+)", bars)]
    widths = [int(wide) for wide in re.findall(r"h(\d+)", bars)]
    assert lefts[0] + widths[0] == lefts[1]


def test_every_number_is_whole():
    hive = Hive(boxes=(Box(depth="shallow", width=8, drawn=7),), excluder_on=1, feeder=True, stand="pallet")
    assert "." not in "".join(shape.d for shape in draw(hive).shapes)


def test_a_nuc_stands_on_smaller_blocks():
    nuc = Hive(boxes=(Box(depth="deep", width=5, drawn=5, nuc=True),), cover="migratory")
    blocks = [d for d in shapes(nuc, "box") if "h40v48" in d]
    assert len(blocks) == 2


def test_more_frames_than_a_box_holds_are_refused():
    with pytest.raises(ValueError, match="11 frames do not go into a box for 10"):
        Box(depth="deep", width=10, drawn=11)


def test_an_unknown_depth_is_refused():
    with pytest.raises(ValueError, match="not 'jumbo'"):
        Box(depth="jumbo", width=10)


def test_an_excluder_without_a_box_under_it_is_refused():
    with pytest.raises(ValueError, match="lies on a box"):
        Hive(excluder_on=1)
