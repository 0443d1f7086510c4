"""Scenarios: reproducible, of mean 1, and as spread as the published surveys and yields say."""

import numpy as np
import pytest
from scipy import stats

from planner.season.scenarios import (
    SPAN_OF_TEN,
    beta_quantiles,
    draw,
    layers,
    log_normals,
    year_sigma,
)
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
    assert share == pytest.approx(0.7, abs=0.01)
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


def test_layers_fill_every_layer_once():
    drawn = layers(np.random.default_rng(1), 50)
    assert sorted((drawn * 50).astype(int)) == list(range(50))


@pytest.mark.parametrize(("mean", "correlation"), [(0.7, 0.075), (0.5, 0.03), (0.95, 0.1), (0.1, 0.02)])
def test_beta_quantiles_agree_with_a_reference(mean, correlation):
    shares = np.linspace(0.02, 0.98, 49)
    total = 1 / correlation - 1
    reference = stats.beta.ppf(shares, mean * total, (1 - mean) * total)
    assert beta_quantiles(shares, mean, correlation) == pytest.approx(reference, abs=2e-3)


def test_log_normals_agree_with_a_reference():
    shares = np.linspace(0.01, 0.99, 21)
    reference = stats.lognorm.ppf(shares, 0.3, scale=np.exp(-0.045))
    assert log_normals(shares, 0.3) == pytest.approx(reference)
    assert (log_normals(shares, 0) == 1).all()


def test_no_colonies_draw_no_winters(answers):
    drawn = draw(operation(colonies=()), answers(), count=3, seed=1)
    assert [scenario.survivors for scenario in drawn] == [{}, {}, {}]
