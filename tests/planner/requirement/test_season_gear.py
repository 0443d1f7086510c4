"""Bundles: widths never mix, combs go by depth, pallets by quarters."""

from dataclasses import replace

from planner.requirement.season_gear import plain
from planner.season.operation import SetFacts
from tests.planner.operations import operation
from tests.planner.projection.test_gear_of_season import in_set
from tests.planner.projection.test_homes import mixed


def test_treated_comb_serves_the_brood_only():
    assert plain("comb-deep-brood-treated") == "comb-deep-brood"
    assert plain("comb-medium-honey-treated") == "comb-medium-brood"
    assert plain("comb-medium-honey") == "comb-medium-honey"


def test_a_super_has_as_many_combs_as_the_keeper_hangs(season_gear):
    assert season_gear().super_bundle(10) == {"box-medium-10": 1, "comb-medium-honey": 9}
    assert season_gear(combs_in_super=8).super_bundle(8) == {"box-medium-8": 1, "comb-medium-honey": 6}
    assert season_gear(super_depth="deep").super_bundle(10) == {"box-deep-10": 1, "comb-deep-honey": 9}


def test_a_new_hive_is_one_brood_box_with_floor_and_covers(season_gear):
    hive = {"box-deep-10": 1, "comb-deep-brood": 10, "floor-10": 1, "inner-cover-10": 1, "cover-10": 1}
    assert season_gear().hive_bundle() == hive
    assert season_gear(in_set("two-deeps-10")).hive_bundle() == hive
    assert season_gear(in_set("deep-and-medium-10")).hive_bundle() == hive


def test_outfits_that_run_all_mediums_are_built_of_mediums(season_gear):
    gear = season_gear(in_set("three-mediums-10"))
    assert gear.hive_bundle()["comb-medium-brood"] == 10
    assert gear.brood_box_bundle() == {"box-medium-10": 2, "comb-medium-brood": 20}
    assert "nuc-box-5" not in gear.nuc_bundle()
    assert gear.nuc_bundle()["comb-medium-brood"] == 5


def test_the_second_box_of_deep_and_medium_is_the_medium(season_gear):
    gear = season_gear(in_set("deep-and-medium-10"))
    assert gear.brood_box_bundle("one-deep-10") == {"box-medium-10": 1, "comb-medium-brood": 10}


def test_a_hive_has_the_boxes_of_its_own_yard(season_gear):
    gear = season_gear(mixed())
    assert gear.hive_bundle("alder")["box-medium-10"] == 1
    assert gear.hive_bundle("birch") == {
        "box-deep-8": 1,
        "comb-deep-brood": 8,
        "floor-8": 1,
        "inner-cover-8": 1,
        "cover-8": 1,
    }
    assert gear.hive_bundle("dogwood")["box-deep-10"] == 1
    assert "nuc-box-5" not in gear.nuc_bundle("alder")
    assert gear.nuc_bundle("birch") == {"nuc-box-5": 1, "comb-deep-brood": 5}
    assert gear.nuc_to_hive_bundle("birch")["comb-deep-brood"] == 3
    assert gear.brood_depths == {"deep", "medium"}


def test_what_goes_on_a_split_is_the_rest_of_its_set(season_gear):
    gear = season_gear(mixed())
    assert gear.brood_box_bundle("three-mediums-10", "alder") == {"box-medium-10": 2, "comb-medium-brood": 20}
    assert gear.brood_box_bundle("two-deeps-8", "birch") == {"box-deep-8": 1, "comb-deep-brood": 8}
    assert gear.brood_box_bundle("one-deep-10", "dogwood") == {"box-deep-10": 1, "comb-deep-brood": 10}


def test_eight_frame_outfits_need_eight(season_gear):
    assert season_gear(in_set("one-deep-8")).brood_box_bundle() == {"box-deep-8": 1, "comb-deep-brood": 8}


def test_a_pallet_is_shared_by_four(season_gear):
    gear = {"box-deep-10": 1, "comb-deep-brood": 10, "pallet-4": 1, "cover-migratory-10": 1}
    pallet = SetFacts(code="on-pallet", name="on a pallet", width=10, boxes={"deep": 1}, gear=gear)
    whole = in_set("one-deep-10")
    groups = tuple(replace(group, hive_set="on-pallet") for group in whole.colonies)
    gear = season_gear(operation(sets=(*whole.sets, pallet), colonies=groups))
    bundle = gear.hive_bundle()
    assert gear.hive_bundle("alder") == bundle
    assert bundle == {"box-deep-10": 1, "comb-deep-brood": 10, "pallet-4": 0.25, "cover-migratory-10": 1}


def test_a_wintered_nuc_brings_its_combs(season_gear):
    gear = season_gear()
    assert gear.nuc_bundle() == {"nuc-box-5": 1, "comb-deep-brood": 5}
    assert gear.nuc_to_hive_bundle()["comb-deep-brood"] == 5


def test_small_parts_are_found_by_width_and_not_asked_for_twice(season_gear):
    gear = season_gear()
    assert gear.small_part("guard", 8) == "guard-8"
    assert gear.small_part("guard", 12) is None
    assert not gear.set_brings("reducer", 10)
    whole = operation()
    sets = tuple(replace(facts, gear={**facts.gear, "reducer-10": 1}) for facts in whole.sets)
    assert season_gear(operation(sets=sets)).set_brings("reducer", 10)
