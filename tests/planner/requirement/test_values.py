"""What gear is worth when it is wanted."""

import pytest

from planner.projection.records import SecondBox
from planner.requirement import values
from planner.season.questions import question_of
from tests.planner.operations import operation


def test_honey_beyond_the_market_goes_at_the_packer_s_price(answers):
    told = answers(honey_price=3, honey_price_more=2, honey_market_lb=1000)
    assert values.honey_price(told, 500) == 3
    assert values.honey_price(told, 2000) == pytest.approx(2.5)
    assert values.honey_price(told, 0) == 3


def test_a_super_by_hand(answers):
    told = answers(super_minutes=30, hour_value=20, mile_cost=0.5)
    yard = operation().yards[2]
    assert (yard.code, yard.drive_minutes, yard.miles) == ("birch", 18, 9.0)
    # 30 lb at 2.50 is 75; half an hour is 10; the trip 36 minutes (12) and 18 miles (9), shared by 40 supers.
    assert values.super_value(told, yard, 30, 2.5) == pytest.approx(75 - 10 - 21 / 40)


def test_a_second_box_saves_its_share_of_the_crop_and_of_a_split_at_least_its_winter(answers):
    told = answers(crop_lost_without_box=0.25, colony_value=200)
    need = {"yard": "birch", "set_code": "one-deep-10", "week": 20, "colonies": 1, "crop_lb": 40}
    assert values.second_box_value(told, SecondBox(strength="strong", **need), 2) == pytest.approx(20)
    assert values.second_box_value(told, SecondBox(strength="split", **need), 2) == pytest.approx(40)


def test_small_gear_is_worth_less_than_a_super(answers):
    told = answers()
    for kind in ("excluder/Clover", "feeder", "guard", "reducer"):
        assert 0 < values.small_gear_value(told, kind) < 10


def test_drawing_a_deep_frame_costs_the_published_honey(answers):
    # 100 g of wax a deep frame (Bogdanov, Beeswax), 8.4 lb of honey a lb of wax (Whitcomb 1946): 1.85 lb.
    assert values.DRAWING_HONEY_LB["deep"] == pytest.approx(100 / 453.6 * 8.4, abs=0.01)
    # Inner volumes of the boxes: medium 0.688 and shallow 0.591 of a deep, from their printed heights.
    assert values.DRAWING_HONEY_LB["medium"] / 1.85 == pytest.approx(0.688, abs=0.005)
    assert values.DRAWING_HONEY_LB["shallow"] / 1.85 == pytest.approx(0.591, abs=0.005)
    assert values.drawing_cost(answers(honey_price_more=2), "deep") == pytest.approx(3.7)


def test_pulling_early_costs_the_lots_trips_and_more_extracting(answers):
    yard = operation().yards[1]
    assert yard.name == "Alder"
    told, trip = answers(pull_early_minutes=10, hour_value=18), 0.4 * 18 + 13 * 0.67
    # Ten minutes at 18 an hour; 24 minutes' and 13 miles' driving, once for up to forty supers, twice for more.
    assert values.early_pull_cost(told, yard, 8) == pytest.approx(3 + trip / 8)
    assert values.early_pull_cost(told, yard, 40) == pytest.approx(3 + trip / 40)
    assert values.early_pull_cost(told, yard, 50) == pytest.approx(3 + 2 * trip / 50)
    assert values.early_pull_cost(answers(pull_early_minutes=0, hour_value=0, mile_cost=0), yard, 8) == 0


def test_bad_years_weigh_more_the_sooner_one_is_short():
    weights = [values.BAD_YEARS_WEIGHT[code] for code, _words in question_of("sooner").choices]
    assert weights == sorted(weights)
    assert weights[0] == 0
    assert all(0 <= weight < 1 for weight in weights)
    assert len(set(weights)) == len(weights) == 5
