"""A hive read out of booked gear: brood boxes lowest, drawn comb from below, held gear shown as held."""

from inventory.stack import Lot, hive_of, words_of

TWO_DEEPS = {"deep": 2}


def box(depth="deep", quantity=1, width=10, **rest):
    return Lot(kind="box", depth=depth, width=width, quantity=quantity, **rest)


def frames(quantity, depth="deep", comb="drawn", **rest):
    return Lot(kind="frame", depth=depth, comb=comb, quantity=quantity, **rest)


def test_brood_boxes_stand_under_the_supers():
    hive = hive_of([box("shallow"), box("medium", 2), box("deep", 2)], brood_boxes=TWO_DEEPS)
    assert [each.depth for each in hive.boxes] == ["deep", "deep", "medium", "medium", "shallow"]


def test_mediums_of_a_set_stand_under_a_deep_that_is_no_part_of_it():
    hive = hive_of([box("medium", 3), box("deep")], brood_boxes={"medium": 3})
    assert [each.depth for each in hive.boxes] == ["medium"] * 3 + ["deep"]


def test_the_excluder_lies_on_the_brood_boxes():
    lots = [box("deep", 2), box("medium"), Lot(kind="excluder", width=10, quantity=1)]
    assert hive_of(lots, brood_boxes=TWO_DEEPS).excluder_on == 2


def test_an_excluder_without_boxes_is_not_drawn():
    assert hive_of([Lot(kind="excluder", quantity=1)], brood_boxes=TWO_DEEPS).excluder_on is None


def test_drawn_comb_fills_from_below():
    hive = hive_of([box("deep", 2), frames(18), frames(2, comb="foundation")], brood_boxes=TWO_DEEPS)
    assert [(each.drawn, each.foundation) for each in hive.boxes] == [(10, 0), (8, 2)]


def test_a_super_of_nine_combs_and_one_of_foundation_are_not_mixed():
    lots = [box("medium", 2), frames(9, "medium"), frames(10, "medium", comb="foundation")]
    hive = hive_of(lots, brood_boxes={})
    assert [(each.drawn, each.foundation) for each in hive.boxes] == [(9, 0), (0, 10)]


def test_supers_of_nine_share_evenly():
    hive = hive_of([box("medium", 3), frames(27, "medium")], brood_boxes={})
    assert [each.drawn for each in hive.boxes] == [9, 9, 9]


def test_brood_comb_lies_under_honey_comb():
    lots = [box("deep", 2), frames(10, comb_use="honey", held=True), frames(10, comb_use="brood")]
    hive = hive_of(lots, brood_boxes=TWO_DEEPS)
    assert [each.held for each in hive.boxes] == [False, True]


def test_frames_for_which_there_is_no_room_are_left_out():
    hive = hive_of([box(), frames(14)], brood_boxes={"deep": 1})
    assert hive.boxes[0].drawn == 10


def test_a_held_box_is_shown_as_held():
    hive = hive_of([box(held=True), box(quantity=1)], brood_boxes=TWO_DEEPS)
    assert [each.held for each in hive.boxes] == [False, True]
    assert words_of(hive) == ["2 deep", "partly held back"]


def test_a_deadout_is_closed_and_a_reducer_reduces():
    assert hive_of([box()], brood_boxes={}, dead=True).entrance == "closed"
    assert hive_of([box(), Lot(kind="reducer", quantity=1)], brood_boxes={}).entrance == "reduced"
    assert hive_of([box()], brood_boxes={}).entrance == "open"


def test_a_nuc_box_brings_its_floor_and_cover():
    hive = hive_of([Lot(kind="nuc box", depth="deep", width=5, quantity=1)], brood_boxes={"deep": 1})
    assert hive.floor and hive.cover == "migratory"
    assert words_of(hive) == ["1 deep nuc"]


def test_floor_and_covers_are_drawn_only_where_they_are_booked():
    bare = hive_of([box()], brood_boxes={})
    assert not bare.floor and not bare.cover
    lots = [box(), Lot(kind="floor", quantity=1), Lot(kind="cover", quantity=1)]
    assert hive_of(lots, brood_boxes={}).cover == "telescoping"
    assert hive_of(lots, brood_boxes={}, migratory=True).cover == "migratory"


def test_on_a_pallet_there_is_no_floor_of_its_own():
    hive = hive_of([box(), Lot(kind="floor", quantity=1)], brood_boxes={}, pallet=True)
    assert (hive.stand, hive.floor) == ("pallet", False)


def test_the_caption_counts_boxes_and_names_a_feeder():
    lots = [box("deep", 2), box("medium"), Lot(kind="feeder", quantity=1)]
    assert words_of(hive_of(lots, brood_boxes=TWO_DEEPS)) == ["2 deep", "1 medium", "feeder"]


def test_a_colony_without_gear_says_so():
    assert words_of(hive_of([], brood_boxes=TWO_DEEPS)) == ["nothing booked"]
