"""Syrup, its sugar and when it is bought, against published tables."""

import math
from types import SimpleNamespace

import numpy as np
import pytest

from planner.after.feeding import bees_cargo, feed_cargo, feed_rows, sugar_lb, sugar_needs, sugar_rows
from planner.after.telling import sentences
from tests.planner.after.made import DAY, section


@pytest.mark.parametrize(("ratio", "pounds"), [("1:1", 5.13), ("2:1", 7.38)])
def test_sugar_in_a_hundred_gallons_is_as_the_tables_say(ratio, pounds):
    """Sucrose solutions at 20 C: 1.2296 g/mL at 50 % (CRC Handbook), 1.3265 at 66.7 % (NBS Circular 440, from memory);
    8.3454 lb/gal per g/mL gives 5.13 and 7.38 lb of sugar a gallon."""
    share, density = {"1:1": (1 / 2, 1.2296), "2:1": (2 / 3, 1.3265)}[ratio]
    assert share * density * 8.3454 == pytest.approx(pounds, abs=0.005)
    assert sugar_lb(100, ratio) == math.ceil(100 * pounds)


def test_a_gallon_a_colony_short_is_seven_pounds_of_stores(after):
    """Stores gained a gallon of 2:1: about 7 lb (extension rule): gallons times 7 reach the target, none above 10 lb."""
    answers = after.facts.assumptions
    rows = [row for row in after.feed if row.season == "autumn"]
    assert rows and {row.ratio for row in rows} == {answers.autumn_syrup}
    for row in rows:
        gained = 7 * row.gallons / row.colonies
        assert 0 < gained <= answers.stores_target_lb


def test_sugar_is_bought_in_the_week_it_is_fed_less_what_is_there():
    (row,) = sugar_rows([(34, 266)], DAY, [(0, 50), (40, 900)])
    assert (row.week, row.needed_lb, row.on_hand_lb, row.buy_lb) == (34, 266, 50, 216)


def test_sugar_used_in_spring_is_not_there_in_autumn():
    assert [row.buy_lb for row in sugar_rows([(10, 266), (34, 266)], DAY, [(0, 300)])] == [0, 232]


def test_the_sugar_bought_is_the_nine_of_ten_of_all_yards_together(after):
    """Against numpy's own quantile of each season's sum: the least value nine seasons of ten do not exceed."""
    sums = [sum(need.colonies * need.sugar_lb for need in drawn.feed) for drawn in after.projections]
    chances = [drawn.probability for drawn in after.projections]
    pooled = np.quantile(sums, 0.9, weights=chances, method="inverted_cdf")
    rows = sugar_rows(sugar_needs(after.projections), DAY, [])
    assert sum(row.buy_lb for row in rows) == math.ceil(pooled - 1e-6) > 0
    assert sum(row.buy_lb for row in rows) <= sum(row.sugar_lb for row in after.feed)


def test_yards_that_ask_for_their_most_in_different_seasons_need_less_sugar_than_their_mosts_add_up_to():
    def drawn(*pounds):
        needs = [
            SimpleNamespace(week=34, yard=yard, colonies=1, sugar_lb=lb)
            for yard, lb in zip("ab", pounds, strict=True)
        ]
        return SimpleNamespace(feed=needs, probability=0.5)

    assert sugar_needs([drawn(100, 20), drawn(30, 80)]) == [(34, 120)]  # the mosts add up to 180


def test_the_sentence_says_whose_nine_of_ten_is_brought_and_whose_is_bought():
    (said,) = [said for said in sentences(section()).sentences if "syrup" in said]
    assert "what each yard's own 90 seasons in 100 ask for at most" in said
    assert (
        "lb of sugar to buy on top of what is there, by what all yards together in 90 seasons in 100" in said
    )


def test_syrup_rides_in_whole_gallons_in_its_week():
    assert dict(feed_cargo(section().feed)) == {"mill-race": [(34, {("syrup-2:1", False): 36})]}


def test_feed_is_told_by_yard_and_season_of_feeding(after):
    facts = after.facts
    rows = feed_rows(facts.operation, facts.assumptions, after.projections)
    assert {row.season for row in rows} <= {"spring", "splits", "autumn"}
    assert all(row.gallons > 0 and row.colonies > 0 for row in rows)
    assert rows == tuple(sorted(rows, key=lambda row: (row.week, row.yard, row.season)))


def test_patties_and_treatments_ride_for_every_colony(after):
    facts = after.facts
    cargo = bees_cargo(facts.operation, facts.assumptions, after.projections)
    patties = sum(
        n for rows in cargo.values() for _week, c in rows for (part, _f), n in c.items() if part == "patty"
    )
    assert patties >= facts.assumptions.patty_lb * max(p.total(16) for p in after.projections) - 1e-6
