"""What a load weighs and the room it takes: outer dimensions, frames inside boxes, the tighter limit counts."""

from decimal import Decimal

import pytest

from inventory.gear import Kind
from inventory.truckload import SPACING, Load, Piece, load_of

COMB = Decimal("0.53")


def box(width=10, depth="medium", **fields):
    """A box of three quarter inch wood: outside 19 7/8 by 16 1/4 in, 6 5/8 or 9 5/8 high (MacFawn, Bee Culture, 2020)."""
    high = {"medium": "6.625", "deep": "9.625"}[depth]
    across = {10: "16.25", 8: "13.875"}[width]
    sides = {"length_in": Decimal("19.875"), "width_in": Decimal(across), "height_in": Decimal(high)}
    sides["lb"] = Decimal("4.98")
    return Piece(kind=Kind.BOX, depth=depth, width=width, **{**sides, **fields})


def frame(depth="medium", **fields):
    sides = {"length_in": Decimal("17.625"), "width_in": Decimal("1.375"), "height_in": Decimal("6.25")}
    sides["lb"] = COMB
    return Piece(kind=Kind.FRAME, depth=depth, **{**sides, **fields})


def test_boxes_take_their_outside_and_a_tenth_more():
    load = load_of([(box(), 4)])
    assert load.cubic_ft == Decimal("19.875") * Decimal("16.25") * Decimal("6.625") * 4 * SPACING / 1728
    assert load.lb == Decimal("19.92")


def test_frames_ride_inside_boxes_of_their_depth_and_weigh_all_the_same():
    empty, filled = load_of([(box(), 2)]), load_of([(frame(), 20), (box(), 2)])
    assert filled.cubic_ft == empty.cubic_ft
    assert filled.lb == empty.lb + 20 * COMB


def test_frames_beyond_the_boxes_and_of_another_depth_take_room_of_their_own():
    inside = load_of([(box(), 1), (frame(), 10)]).cubic_ft
    more = load_of([(box(), 1), (frame(), 11)]).cubic_ft - inside
    assert more == pytest.approx(load_of([(frame(), 1)]).cubic_ft)
    assert (
        load_of([(box(depth="deep"), 1), (frame(), 10)]).cubic_ft > load_of([(box(depth="deep"), 1)]).cubic_ft
    )


def test_two_kinds_of_frames_share_the_seats():
    seats = load_of([(box(), 1), (frame(), 6), (frame(lb=Decimal(1)), 4)]).cubic_ft
    assert seats == load_of([(box(), 1)]).cubic_ft


def test_boxes_in_pieces_pack_into_a_quarter_and_hold_no_frames():
    flat = box(flat=True)
    assert flat.cubic_in * 4 == box().cubic_in
    assert flat.holds == 0
    assert load_of([(flat, 1), (frame(), 10)]).cubic_ft > load_of([(flat, 1)]).cubic_ft


@pytest.mark.parametrize("kind", list(Kind))
def test_gear_without_dimensions_in_the_catalogue_takes_room_too(kind):
    assert 0 < Piece(kind=kind, lb=Decimal(1)).cubic_in < 20_000


def test_feed_in_bags_takes_about_a_cubic_foot_for_fifty_pounds():
    sugar = Piece(kind=Kind.FEED, lb=Decimal(1), unit="lb")
    assert Decimal("0.9") < load_of([(sugar, 50)]).cubic_ft < Decimal("1.3")
    assert load_of([(sugar, 50)]).lb == 50


def test_a_full_super_weighs_what_teaching_says():
    """A full medium is 50 to 60 lb and a full deep 80 to 90 lb with box and combs (extension teaching, from memory)."""
    for depth, low, high in (("medium", 50, 60), ("deep", 80, 90)):
        one = box(depth=depth)
        assert low <= one.lb + 10 * COMB + one.honey_lb(COMB) <= high
    assert box(8).honey_lb(COMB) < box(10).honey_lb(COMB)


def test_only_boxes_can_be_full_of_honey():
    assert frame().honey_lb(COMB) == box(flat=True).honey_lb(COMB) == 0


def test_honey_adds_weight_and_no_room():
    told = load_of([(box(), 2)], honey_lb=Decimal(90))
    assert (told.lb, told.honey_lb) == (Decimal("99.96"), 90)
    assert told.cubic_ft == load_of([(box(), 2)]).cubic_ft


@pytest.mark.parametrize(
    ("lb", "cubic_ft", "trips"),
    [(0, 0, 0), (1000, 50, 1), ("1000.1", 50, 2), (10, 51, 2), (2500, 151, 4), (3001, 10, 4)],
)
def test_the_tighter_of_weight_and_room_tells_the_trips(lb, cubic_ft, trips):
    """A load is split by weight and by count, and the tighter binds: 1,000 kg a pallet in units of 25 kg are 40 units
    (Government of Western Australia, DPIRD, "Preventing spread of American foulbrood disease")."""
    assert Load(lb=Decimal(lb), cubic_ft=Decimal(cubic_ft)).trips(1000, 50) == trips
    assert Load(lb=Decimal(40 * 25), cubic_ft=Decimal(1)).trips(1000, 50) == 1


def test_a_load_weighs_the_sum_of_its_pieces_and_nothing_weighs_nothing():
    assert load_of([(box(lb=Decimal("7.23")), 8), (frame(), 40)]).lb == Decimal("79.04")
    assert load_of([]) == Load(lb=Decimal(0), cubic_ft=Decimal(0))
