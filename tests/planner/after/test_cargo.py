"""What fits on the truck: weights of full supers and syrup, frames in their boxes, the tighter of weight and room."""

import pytest

from planner.after.cargo import SYRUP_LB
from tests.planner.after.made import COMB, MEDIUM, truck

BOX, FULL, FRAMES = (MEDIUM, False), (MEDIUM, True), (COMB, False)


def most(carrier, key, pieces):
    """How many of so many pieces the empty truck takes."""
    return max(n for n in range(pieces + 1) if carrier.takes({key: n}))


def test_a_full_medium_weighs_what_is_taught():
    """50 to 60 lb gross (extension teaching, from memory); the upper figure is planned with."""
    assert float(truck().load({FULL: 1, FRAMES: 10}).lb) == pytest.approx(60)


def test_weight_binds_on_the_way_home_and_room_on_the_way_out():
    """By weight and by count, the tighter binds, as for pallets of 25 kg units within 1,000 kg: 40 (Government of
    Western Australia, Preventing spread of American foulbrood disease)."""
    carrier = truck(lb=1000, cubic_ft=50)
    assert most(carrier, BOX, 500) < 60  # room: 300 lb of boxes
    assert 1000 // 60 <= most(carrier, FULL, 500) <= 1000 // 55
    pallet = truck(lb=1000, cubic_ft=10**6)
    assert most(pallet, ("sugar", False), 2000) == 1000


def test_frames_ride_in_the_boxes_of_their_depth():
    carrier = truck()
    assert carrier.load({BOX: 2, FRAMES: 20}).cubic_ft == carrier.load({BOX: 2}).cubic_ft
    assert carrier.load({BOX: 2, FRAMES: 21}).cubic_ft > carrier.load({BOX: 2}).cubic_ft


@pytest.mark.parametrize(("syrup", "sugar_lb"), [("syrup-1:1", 5.13), ("syrup-2:1", 7.38)])
def test_a_gallon_of_syrup_weighs_its_sugar_and_water(syrup, sugar_lb):
    """1:1 by weight: 10.26 lb a gallon, half of it sugar (CRC Handbook, 1.2296 g/mL at 50 %); 2:1: 11.07 lb, two thirds
    of it sugar (NBS Circular 440, 1.3265 g/mL at 66.7 %, from memory)."""
    share = {"syrup-1:1": 1 / 2, "syrup-2:1": 2 / 3}[syrup]
    assert float(SYRUP_LB[syrup]) * share == pytest.approx(sugar_lb, abs=0.005)


def test_a_leg_tells_boxes_first_and_syrup_last():
    leg = truck().leg({("syrup-2:1", False): 3, FRAMES: 20, BOX: 2})
    assert [line.part for line in leg.carried] == [MEDIUM, COMB, "syrup-2:1"]
    assert [line.unit for line in leg.carried] == ["piece", "piece", "gallon"]
    assert leg.lb == round(33.21 + 10 + 10)
