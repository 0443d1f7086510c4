"""Growth: the steady states, the threshold and the courses of the published model; and what is made of them."""

import math

import pytest

from planner.projection.flow import share_of_full
from planner.projection.growth import (
    FRAMES,
    HONEY_POWER,
    Bees,
    critical_death_rate,
    grown,
    modelled_share,
    steady_state,
)


def test_the_critical_death_rate_is_the_papers():
    # Khoury, Myerscough and Barron (2011): about 0.355 (from memory); the closed form gives 0.35520.
    assert critical_death_rate() == pytest.approx(0.35520, abs=5e-6)


@pytest.mark.parametrize(
    ("death_rate", "hive", "foragers", "together"),
    [
        (0.10, 31_721, 12_408, 44_129),
        (0.20, 10_261, 3_352, 13_613),
        (0.24, 6_470, 1_988, 8_458),
        (0.30, 2_542, 718, 3_260),
    ],
)
def test_steady_states_are_those_of_the_closed_form(death_rate, hive, foragers, together):
    # Derived from the paper's equations and its parameters by hand.
    found = steady_state(death_rate)
    assert (round(found.hive), round(found.foragers), round(found.all)) == (hive, foragers, together)


def test_above_the_critical_rate_nothing_stays_and_below_it_something_does():
    critical = critical_death_rate()
    assert steady_state(critical + 1e-4).all == 0
    assert 0 < steady_state(critical - 1e-4).all < 50


@pytest.mark.parametrize(
    ("death_rate", "after_100", "after_200"), [(0.24, 10_353, 8_857), (0.40, 2_441, 855)]
)
def test_courses_from_a_middling_colony(death_rate, after_100, after_200):
    # The same equations integrated apart, with steps of 0.01 days.
    start = Bees(hive=16_000, foragers=8_000)
    assert grown(start, days=100, death_rate=death_rate).all == pytest.approx(after_100, abs=1)
    assert grown(start, days=200, death_rate=death_rate).all == pytest.approx(after_200, abs=1)


def test_a_steady_state_stays():
    still = steady_state(0.1)
    later = grown(still, days=60, death_rate=0.1)
    assert later.hive == pytest.approx(still.hive, rel=1e-6)
    assert later.foragers == pytest.approx(still.foragers, rel=1e-6)


def test_no_bees_grow_to_no_bees():
    assert grown(Bees(hive=0, foragers=0), days=9, death_rate=0.1).all == 0


def test_a_colony_of_sixty_thousand_makes_half_as_much_again_as_four_of_fifteen():
    # Farrar, as quoted in the teaching of beekeeping.
    assert math.isclose(60_000**HONEY_POWER, 1.5 * 4 * 15_000**HONEY_POWER)


def test_smaller_colonies_catch_up_and_never_overtake():
    for strength in FRAMES:
        shares = [modelled_share(strength, weeks) for weeks in range(0, 30, 3)]
        assert shares == sorted(shares)
        assert shares[-1] <= 1
    assert modelled_share("weak", 5) < modelled_share("fair", 5) < modelled_share("strong", 5) == 1


@pytest.mark.parametrize("strength", ["fair", "weak"])
def test_the_usual_shares_lie_near_the_models(strength):
    for weeks in (0, 5, 10):
        usual = float(share_of_full(strength, [weeks])[0])
        assert float(share_of_full(strength, [weeks], "model")[0]) == pytest.approx(usual, abs=0.2)


def test_a_split_that_is_not_there_yet_gathers_nothing():
    assert share_of_full("split", [-3], "model").tolist() == [0.0]


def test_the_model_may_say_how_colonies_catch_up(projected):
    usual, modelled = (projected(count=3, growth=word)[0].crop_lb for word in ("usual", "model"))
    assert usual != modelled
    assert modelled == pytest.approx(usual, rel=0.25)
