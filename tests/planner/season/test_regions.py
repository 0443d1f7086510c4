"""Regions: monotone in climate, half a year apart on the two halves of the globe."""

import pytest

from planner.season.regions import MIDDLE, NORTH, REGIONS, SOUTH, half_a_year_on, region_of


def test_stores_rise_with_the_winter_and_lie_in_the_published_brackets():
    # Moeller 1977: 90 lb in the north; Tew 2016: 60 to 70 lb on average; about 40 lb in the south is common guidance.
    assert SOUTH.stores_target_lb < MIDDLE.stores_target_lb < NORTH.stores_target_lb
    assert 80 <= NORTH.stores_target_lb <= 90
    assert 60 <= MIDDLE.stores_target_lb <= 70
    assert SOUTH.stores_target_lb == 40


def test_the_southern_half_is_half_a_year_on():
    by_code = {region.code: region for region in REGIONS}
    assert by_code["southern-long"].split_week == half_a_year_on(NORTH.split_week)
    assert half_a_year_on(half_a_year_on(13)) == 13
    assert half_a_year_on(26) == 52


@pytest.mark.parametrize(
    ("word", "code"),
    [
        ("north", "north"),
        ("The South coast", "south"),
        ("southern-short", "southern-short"),
        ("southern hemisphere", "southern-ordinary"),
        ("Invented county", "middle"),
        ("", "middle"),
    ],
)
def test_a_keepers_word_finds_its_region(word, code):
    assert region_of(word).code == code
