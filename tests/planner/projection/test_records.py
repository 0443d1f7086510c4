"""The projection's records add up."""

from planner.projection.records import Splits


def test_kept_and_sold_make_what_was_made():
    split = Splits(yard="alder", week=20, hive_week=24, attempts=6, made=4, sold=1, homes={"alder": 3})
    assert split.kept == 3 == sum(split.homes.values())


def test_a_week_s_colonies_are_summed_over_yards(projected):
    projection = projected(count=1)[0]
    assert projection.total(0) == 110
    by_hand = sum(counts[51] for counts in projection.colonies.values())
    assert projection.total(51) == by_hand
