"""Uses in plain words, without their yards."""

from planner.plan.use_words import NAMES, PURPOSES, purposes, what_of


def test_uses_are_named_without_their_yards():
    assert what_of("super/creek/clover/strong+fair/2") == "second supers in Clover"
    assert what_of("super/creek/clover/strong/12") == "12 supers in Clover"
    assert what_of("second-box/creek/strong") == "second brood boxes"
    assert what_of("hive/creek/from-hill") == "hives for splits"
    assert what_of("honey-house/shed") == "honey house"


def test_gear_is_said_to_go_into_what_has_a_name():
    assert set(PURPOSES) <= NAMES.keys()
    assert purposes(("super", "guard", "hive")) == ["supers", "hives for splits"]
    assert purposes(("feed", "consumable")) == []
