"""Feed: gallons in the published bracket, sugar by the published solids, honey of deadouts first."""

import numpy as np
import pytest

from planner.projection.feed import STORES_LB_PER_GALLON, SUGAR_LB_PER_GALLON, autumn_gallons
from tests.planner.operations import operation


def test_sugar_in_a_gallon_follows_the_published_densities():
    # CRC Handbook: 50 % sucrose 1.2296 g/mL; NBS Circular 440 (from memory): 66.7 % 1.3265; 8.3454 lb/gal per g/mL.
    assert SUGAR_LB_PER_GALLON["1:1"] == pytest.approx(1.2296 * 8.3454 / 2, abs=0.01)
    assert SUGAR_LB_PER_GALLON["2:1"] == pytest.approx(1.3265 * 8.3454 * 2 / 3, abs=0.01)


def test_a_gallon_never_stores_more_than_its_sugar_could():
    # Honey of 81.4 % solids (US Standards for Grades of Extracted Honey, 1985): 7.38 lb of sugar make at most 9.07 lb.
    for syrup, sugar in SUGAR_LB_PER_GALLON.items():
        assert STORES_LB_PER_GALLON[syrup] < sugar / 0.814


@pytest.mark.parametrize("region", ["north", "middle"])
def test_autumn_feed_lies_in_the_published_bracket(projected, region):
    # Topitzhofer et al., PNW 745 (2020), table 1: autumn 3 to 4 gallons in Idaho, 3 to 6.5 in Oregon.
    gallons = [f.gallons for p in projected(count=60, region=region) for f in p.feed if f.season == "autumn"]
    assert 3 <= np.mean(gallons) <= 6.5


def test_spring_feed_and_splits_lie_in_the_published_bracket(answers):
    # The same table: spring 2.5 to 8 gallons in Idaho, 1.5 to 4 in Oregon; patties up to 6 lb in spring, 4 to 8 autumn.
    told = answers()
    assert 1.5 <= told.spring_feed_gal <= 8
    assert 1.5 <= told.split_feed_gal <= 8
    assert told.patty_lb <= 6 + 8


def test_a_better_year_needs_less_autumn_feed_and_never_less_than_none(answers):
    gallons = [autumn_gallons(answers(), flow) for flow in (0.5, 1.0, 1.5, 9.0)]
    assert gallons[0] > gallons[1] > gallons[2] > gallons[3] == 0
    assert gallons[1] == pytest.approx((85 - 57) / 7)


def test_honey_of_deadouts_is_fed_before_syrup(projected):
    none = sum(
        f.sugar_lb * f.colonies
        for f in projected(count=1, deadout_honey_lb=0)[0].feed
        if f.season == "spring"
    )
    some = sum(
        f.sugar_lb * f.colonies
        for f in projected(count=1, deadout_honey_lb=5)[0].feed
        if f.season == "spring"
    )
    assert 0 < some < none


def test_splits_are_fed_by_attempt(projected):
    projection = projected(count=1)[0]
    fed = sum(f.colonies for f in projection.feed if f.season == "splits")
    assert fed == sum(split.attempts for split in projection.splits) > 0


def test_no_target_means_no_autumn_feed(projected):
    assert not [f for f in projected(count=1, stores_target_lb=0)[0].feed if f.season == "autumn"]


def test_consumables_follow_their_drivers(projected):
    projection = projected(
        count=1, treatments=3, patty_lb=2, jar_share=0.5, jar_lb=2, bucket_returns_share=0
    )[0]
    rows = {row.part: row.quantity for row in projection.consumables}
    week = next(row.week for row in projection.consumables if row.part == "treatment")
    assert rows["treatment"] == 3 * projection.total(week)
    assert rows["jar"] == pytest.approx(projection.crop_lb * 0.5 / 2)
    assert rows["bucket"] == pytest.approx(projection.crop_lb * 0.5 / 60)


def test_what_the_catalogue_lacks_is_not_asked_for(projected):
    parts = tuple(part for part in operation().parts if part.code != "jar")
    assert "jar" not in {row.part for row in projected(operation(parts=parts), count=1)[0].consumables}
