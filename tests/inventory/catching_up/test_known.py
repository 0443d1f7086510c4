"""Names are found whatever their case, by name or code; a person finds only what is theirs."""

import pytest

from inventory.catching_up.known import Known, plain
from tests import makers

pytestmark = pytest.mark.django_db


def test_case_and_spaces_do_not_matter():
    assert plain("  Fern   HOLLOW ") == "fern hollow"


def test_parts_sets_combs_feed_and_what_the_bench_makes(outfit):
    known = Known()
    assert known.home == outfit
    assert known.pieces("Deep box, 10 frames") == known.piece("BOX-DEEP-10") == {"box-deep-10": 1}
    assert known.piece("medium super with foundation, 10 frames") is None
    assert [part.code for part in known.comb("medium drawn honey comb")] == [
        "comb-medium-honey",
        "frame-medium-foundation",
    ]
    assert known.comb("deep box, 10 frames") is None
    assert known.made("box-deep-10").code == "box-deep-10"
    assert known.made("sugar") is None
    assert [known.ration(word) for word in ("Syrup 2:1", "1:1", "Patties", "honey")] == [
        "syrup-2-1",
        "syrup-1-1",
        "patty",
        None,
    ]


def test_a_set_goes_with_its_foundation_fitted(outfit):
    assert Known().pieces("super-medium-10") == {"box-medium-10": 1, "frame-medium-foundation": 10}
    assert Known().pieces("no such") is None


def test_supers_and_brood_boxes_are_found_by_set_or_by_box(outfit):
    known = Known()
    assert (
        known.super_code("medium box, 10 frames") == known.super_code("super-medium-10") == "super-medium-10"
    )
    assert known.brood_box_code("box-deep-10") == "brood-box-deep-10"
    assert known.super_code("brood-box-deep-10") is None


def test_a_person_finds_only_the_yards_and_colonies_given_to_them(outfit):
    helper = makers.make_person("helper", role="helper", yards=[makers.Yard.objects.get(code="fern-hollow")])
    known = Known(helper)
    assert set(known.colonies) == {"f-01", "f-02"}
    assert set(known.yards) == {"fern-hollow", "fern hollow"}
