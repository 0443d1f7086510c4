"""Scenarios: reproducible, of mean 1, and as spread as the published surveys and yields say."""

import datetime as dt

import numpy as np
import pytest
from scipy import stats

from planner.season.operation import SoFar
from planner.season.scenarios import SPAN_OF_TEN, draw, year_sigma
from planner.season.survival import WINTER_CORRELATION
from tests.planner.operations import operation

# Overdispersion of winter losses implied by the printed confidence intervals: 8.2 and 6.5 (COLOSS 2016/17,
# Brodschneider et al. 2018; 2017/18, Gray et al. 2019), 11.5 and 14.2 (US 2013/14, Lee et al. 2015; 2015/16,
# Kulhanek et al. 2017).
PUBLISHED_OVERDISPERSION = (6.5, 14.2)


def test_the_same_seed_gives_the_same_scenarios_and_another_seed_others(answers):
    first = draw(operation(), answers(), count=30, seed=7)
    assert first == draw(operation(), answers(), count=30, seed=7)
    assert first != draw(operation(), answers(), count=30, seed=8)


def test_probabilities_are_equal_and_codes_unique(answers):
    drawn = draw(operation(), answers(), count=40, seed=1)
    assert {scenario.probability for scenario in drawn} == {1 / 40}
    assert len({scenario.code for scenario in drawn}) == 40


def test_the_deaths_are_as_overdispersed_as_the_published_surveys(answers):
    whole = operation()
    colonies = sum(group.colonies for group in whole.colonies)
    drawn = draw(whole, answers(), count=3000, seed=1)
    alive = np.array([sum(scenario.survivors.values()) for scenario in drawn])
    share = alive.mean() / colonies
    assert share == pytest.approx(answers().survival_share, abs=0.01)
    overdispersion = alive.var() / (colonies * share * (1 - share))
    assert PUBLISHED_OVERDISPERSION[0] < overdispersion < PUBLISHED_OVERDISPERSION[1]


def test_weak_colonies_die_more_often(answers):
    whole = operation()
    drawn = draw(whole, answers(), count=500, seed=1)
    shares = {}
    for strength in ("strong", "fair", "weak"):
        groups = [group for group in whole.colonies if group.strength == strength]
        before = sum(group.colonies for group in groups)
        keys = [(group.yard, group.hive_set, group.strength) for group in groups]
        shares[strength] = (
            np.mean([sum(scenario.survivors[key] for key in keys) for scenario in drawn]) / before
        )
    assert shares["strong"] > shares["fair"] > shares["weak"]


@pytest.mark.parametrize(("share", "alive"), [(0, 0), (1, 110)])
def test_a_winter_that_kills_all_or_none(answers, share, alive):
    drawn = draw(operation(), answers(survival_share=share), count=5, seed=1)
    assert {sum(scenario.survivors.values()) for scenario in drawn} == {alive}


def test_the_flow_factors_have_mean_one(answers):
    drawn = draw(operation(), answers(), count=1000, seed=2)
    assert np.mean([scenario.year_flow for scenario in drawn]) == pytest.approx(1, abs=0.01)
    for window in drawn[0].flow:
        assert np.mean([scenario.flow[window] for scenario in drawn]) == pytest.approx(1, abs=0.05)


def test_the_spread_of_a_flow_is_the_keepers(answers):
    drawn = draw(operation(), answers(), count=2000, seed=2)
    factors = [scenario.flow["alder", "Clover"] for scenario in drawn]
    assert np.std(factors) == pytest.approx(0.35, abs=0.03)


def test_the_year_spread_lies_in_the_published_variation_of_yields(answers):
    # USDA NASS, Honey, 2014 to 2023: variation of a state's yield between years 0.04 to 0.27, median 0.14.
    assert 0.04 < year_sigma(answers()) < 0.27


def test_best_and_worst_of_ten_years_lie_as_far_apart_as_order_statistics_say():
    # Expected range of ten normal draws: 3.078 (any table of the relative range; here integrated).
    grid = np.linspace(-8, 8, 20001)
    inside = 1 - stats.norm.cdf(grid) ** 10 - (1 - stats.norm.cdf(grid)) ** 10
    assert np.trapezoid(inside, grid) == pytest.approx(SPAN_OF_TEN, abs=0.01)


def test_no_colonies_draw_no_winters(answers):
    drawn = draw(operation(colonies=()), answers(), count=3, seed=1)
    assert [scenario.survivors for scenario in drawn] == [{}, {}, {}]


def test_less_than_one_season_is_refused(answers):
    with pytest.raises(ValueError, match="At least one season must be drawn, not 0"):
        draw(operation(), answers(), count=0, seed=1)


def test_winters_of_ones_own_that_swing_widely_are_drawn_so(answers):
    told = answers(winters="100/95, 100/20, 100/90, 100/40, 100/97")
    assert told.winter_correlation > WINTER_CORRELATION
    spread = [
        np.std([sum(scenario.survivors.values()) for scenario in draw(operation(), one, count=400, seed=3)])
        for one in (answers(survival_share=told.survival_share), told)
    ]
    assert spread[1] > 1.2 * spread[0]


def test_a_summer_takes_the_published_share_of_those_that_came_through(answers):
    # Steinhauer et al. (2014), Lee et al. (2015), Kulhanek et al. (2017): US summers took 25.3, 19.8 and 23.6 %.
    drawn = draw(operation(), answers(), count=1000, seed=4)
    alive = sum(sum(scenario.survivors.values()) for scenario in drawn)
    dead = sum(sum(scenario.summer_dead.values()) for scenario in drawn)
    united = sum(sum(scenario.united.values()) for scenario in drawn)
    assert 0.19 < (dead + united) / alive < 0.255
    assert united / (dead + united) == pytest.approx(answers().summer_united_share, abs=0.03)


@pytest.mark.parametrize("share", [0, 1])
def test_a_summer_that_takes_none_or_all(answers, share):
    for together in (0, 0.5, 1):
        told = answers(summer_loss_share=share, summer_united_share=together)
        for scenario in draw(operation(), told, count=4, seed=1):
            gone = sum(scenario.summer_dead.values()) + sum(scenario.united.values())
            assert gone == share * sum(scenario.survivors.values())


def test_another_answer_about_the_summer_leaves_winters_and_flows_as_they_were(answers):
    first = draw(operation(), answers(), count=20, seed=5)
    other = draw(operation(), answers(summer_loss_share=0.5, splits_good_of_ten=3), count=20, seed=5)
    assert [s.survivors for s in first] == [s.survivors for s in other]
    assert [s.flow for s in first] == [s.flow for s in other]
    assert [s.summer_dead for s in first] != [s.summer_dead for s in other]


def test_a_better_winter_saves_at_least_as_many_in_every_scenario(answers):
    worse = draw(operation(), answers(survival_share=0.6), count=30, seed=6)
    better = draw(operation(), answers(survival_share=0.8), count=30, seed=6)
    for one, other in zip(worse, better, strict=True):
        assert all(one.survivors[group] <= other.survivors[group] for group in one.survivors)


def test_seeds_give_sets_that_share_nothing_and_do_not_move_together(answers):
    first, fresh = (draw(operation(), answers(), count=400, seed=seed) for seed in (1, 2))
    flows = [{scenario.year_flow for scenario in drawn} for drawn in (first, fresh)]
    assert not flows[0] & flows[1]
    for of in (lambda s: s.year_flow, lambda s: sum(s.survivors.values()), lambda s: s.split_success):
        moved = np.corrcoef([of(s) for s in first], [of(s) for s in fresh])[0, 1]
        assert abs(moved) < 4 / np.sqrt(400)


def test_a_flow_said_to_be_ahead_draws_from_the_best_third_of_years(answers):
    """The mean of a standard normal in its upper third is 1.0909 (scipy)."""
    third = stats.norm.ppf(2 / 3)
    assert stats.norm.expect(lambda z: z, lb=third, conditional=True) == pytest.approx(1.0909, abs=1e-3)
    year = {
        told: np.array([s.year_flow for s in draw(operation(), answers(flow_so_far=told), count=300, seed=5)])
        for told in ("unknown", "behind", "usual", "ahead")
    }
    assert year["behind"].max() <= year["usual"].min() <= year["usual"].max() <= year["ahead"].min()
    sigma = year_sigma(answers())
    logs = (np.log(year["ahead"]) + sigma**2 / 2) / sigma
    assert logs.mean() == pytest.approx(1.0909, abs=0.02)
    assert year["unknown"].std() > max(year[told].std() for told in ("behind", "usual", "ahead"))


def test_colonies_found_dead_of_this_winter_already_are_among_those_it_was_going_to_take(answers):
    living = sum(group.colonies for group in operation().colonies)
    found = SoFar(dead=((dt.date(2025, 11, 20), 12), (dt.date(2025, 7, 1), 30)))
    usual, known = (
        np.mean([sum(s.survivors.values()) for s in draw(whole, answers(), count=400, seed=4)])
        for whole in (operation(), operation(so_far=found))
    )
    assert known / usual == pytest.approx((living + 12) / living, rel=0.02)  # July's dead are another matter


def test_a_winter_that_is_counted_takes_nobody(answers):
    drawn = draw(operation(), answers(winter_counted=True), count=5, seed=4)
    living = sum(group.colonies for group in operation().colonies)
    assert {sum(scenario.survivors.values()) for scenario in drawn} == {living}
