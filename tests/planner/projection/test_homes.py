"""The set a split is hived in: its yard's commonest, or the commonest of all."""

from dataclasses import replace

from planner.projection.homes import home_set, split_homes, width_at
from tests.planner.operations import operation


def mixed():
    """Alder in three mediums, birch in eight-frame deeps, cedar in nucs only, the rest as they are."""
    own = {"alder": "three-mediums-10", "birch": "two-deeps-8", "cedar": "nuc-5"}
    groups = {}
    for group in operation().colonies:
        moved = replace(group, hive_set=own.get(group.yard, group.hive_set))
        key = moved.yard, moved.hive_set, moved.strength
        groups[key] = replace(moved, colonies=moved.colonies + getattr(groups.get(key), "colonies", 0))
    return operation(colonies=tuple(groups.values()))


def test_each_yard_has_its_own_commonest_set(answers):
    homes = split_homes(mixed(), answers())
    assert homes["alder"].code == "three-mediums-10"
    assert homes["birch"].code == "two-deeps-8"
    assert homes["dogwood"].code == "one-deep-10"
    assert (width_at(homes, "birch"), width_at(homes, "alder")) == (8, 10)


def test_a_yard_of_nucs_or_of_nothing_gets_the_commonest_of_all(answers):
    homes = split_homes(mixed(), answers())
    assert homes["cedar"] == homes["shed"] == home_set(mixed())


def test_the_keeper_may_want_all_splits_alike(answers):
    homes = split_homes(mixed(), answers(split_home="all"))
    assert {home.code for home in homes.values()} == {"one-deep-10"}


def test_no_set_at_all_is_ten_frames_wide(answers):
    bare = operation(sets=tuple(facts for facts in operation().sets if facts.is_nuc), colonies=())
    assert width_at(split_homes(bare, answers()), "alder") == 10
