"""Use codes read as the keeper would say them."""

import pytest

from planner.requirement.words import describe, slug, title

SAID = {
    "super/creek/clover/strong/2": "second super of strong colonies, Clover at Creek",
    "super/creek/white-clover/strong+fair/1": "first super of strong and fair colonies, White clover at Creek",
    "super/creek/clover/split/1": "first super of this year's splits, Clover at Creek",
    "super/creek/clover/weak/1/8-frame": "first super of weak colonies, 8 frames, Clover at Creek",
    "super/creek/clover/strong/12": "12 super of strong colonies, Clover at Creek",
    "excluder/creek/clover/26": "queen excluders, Clover at Creek",
    "second-box/creek/fair": "second brood box of fair colonies at Creek",
    "second-box/creek/split": "second brood box of this year's splits at Creek",
    "second-box/creek/fair/in-one-deep-8": "second brood box of fair colonies in one deep 8 at Creek",
    "split/creek": "splits in nuc boxes at Creek",
    "hive/creek": "hives for splits that made it at Creek",
    "hive/creek/from-hill": "hives for splits that made it at Creek, splits from Hill",
    "nuc/creek": "nucs sold from Creek",
    "nuc-to-hive/creek/fair": "hives for wintered nucs at Creek",
    "feeder/creek/38": "top feeders for autumn feeding at Creek",
    "guard/creek/40": "mouse guards at Creek",
    "reducer/creek/38/8-frame": "entrance reducers at Creek, 8 frames",
    "feed/creek/autumn/40": "autumn feed at Creek",
    "feed/shed/spring/16": "spring feed, all yards",
    "feed/shed/splits/22": "feed for splits, all yards",
    "consumable/shed/jar": "jars for the crop",
    "consumable/shed/treatment": "mite treatments",
    "left-on/creek/clover/strong+fair/1": "first super of strong and fair colonies left on to the end, Clover at Creek",
    "hive-till-winter/creek": "hives of splits that die in the winter at Creek",
    "hive-till-winter/creek/from-hill": "hives of splits that die in the winter at Creek, splits from Hill",
    "moth/shed": "combs in store lost to wax moth",
    "drawing-over/shed/32": "drawing that ends with the flow",
    "renew/shed/deep": "old deep combs renewed, all yards",
}


@pytest.mark.parametrize("code", SAID)
def test_a_use_is_described_in_trade_words(code):
    assert describe(code) == SAID[code]


def test_every_use_of_a_season_has_words_of_its_own(season_problem):
    for scenario in season_problem(count=3).scenarios:
        for use in scenario.uses:
            said = describe(use.code)
            assert said
            assert "/" not in said


@pytest.mark.parametrize(
    ("name", "code"), [("White Clover", "white-clover"), ("Maple & fruit", "maple-fruit"), ("x", "x")]
)
def test_names_become_pieces_of_codes(name, code):
    assert slug(name) == code
    assert title(code)[0].isupper()
