"""The usual full hive for one colony, exploded into gear. Common practice, no source."""

import json
from collections import Counter

import pytest

from inventory.catalogue import CATALOGUE, ensure_catalogue
from inventory.models import GearSet, Part

pytestmark = pytest.mark.django_db


@pytest.fixture
def catalogue():
    ensure_catalogue()


def exploded(code):
    """Pieces by (kind, depth) of a gear set in the books."""
    pieces = Counter()
    for line in GearSet.objects.get(code=code).lines.select_related("part"):
        pieces[line.part.kind] += line.quantity
        pieces[line.part.kind, line.part.depth] += line.quantity
    return pieces


@pytest.mark.parametrize(("width", "frames"), [(10, 40), (8, 32)])
def test_a_full_hive_is_two_deeps_two_supers_and_a_frame_and_sheet_for_every_place(catalogue, width, frames):
    pieces = exploded(f"full-hive-{width}")
    assert (pieces["frame"], pieces["foundation"]) == (frames, frames)
    assert (pieces["box", "deep"], pieces["box", "medium"]) == (2, 2)
    assert pieces["frame", "deep"] == pieces["foundation", "deep"] == 2 * width
    assert pieces["frame", "medium"] == pieces["foundation", "medium"] == 2 * width
    for kind in ("floor", "inner cover", "cover", "reducer"):
        assert pieces[kind] == 1, kind


def test_a_full_hive_mixes_no_widths(catalogue):
    for width in (10, 8):
        widths = {
            line.part.width
            for line in GearSet.objects.get(code=f"full-hive-{width}").lines.select_related("part")
            if line.part.width
        }
        assert widths == {width}


def test_a_full_hive_is_its_brood_boxes_and_supers_with_floor_and_covers(catalogue):
    boxes = exploded("brood-box-deep-10") + exploded("brood-box-deep-10")
    boxes += exploded("super-medium-10") + exploded("super-medium-10")
    whole = exploded("full-hive-10")
    assert {key: n for key, n in whole.items() if key in boxes} == dict(boxes)


def test_a_nuc_holds_five_frames(catalogue):
    """Haynie, University of Florida Circular 90, 1949: a hive of five frames."""
    pieces = exploded("nuc-5")
    assert (pieces["nuc box"], pieces["frame"]) == (1, 5)
    assert Part.objects.get(code="nuc-box-5").width == 5


def test_every_colony_set_has_a_frame_for_every_place_in_its_boxes(catalogue):
    for row in json.loads(CATALOGUE.read_text(encoding="utf-8"))["hive_sets"]:
        boxes = row["deep_boxes"] + row["medium_boxes"] + row["shallow_boxes"]
        assert exploded(row["code"])["frame"] == boxes * row["width"], row["code"]
