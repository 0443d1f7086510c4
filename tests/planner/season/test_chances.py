"""Quantiles: those of scipy's distributions, and the same luck whatever the chances are."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import stats

from planner.season.chances import beta_quantiles, binomial_quantiles, layers, log_normals


def test_a_layer_each_and_no_order():
    numbers = layers(np.random.default_rng(3), 100)
    assert sorted((numbers * 100).astype(int)) == list(range(100))
    assert list(numbers) != sorted(numbers)


@pytest.mark.parametrize("mean", [0.05, 0.3, 0.7, 0.95])
@pytest.mark.parametrize("correlation", [0.01, 0.075, 0.4])
def test_beta_quantiles_are_scipys(mean, correlation):
    shares = np.linspace(0.01, 0.99, 25)
    total = 1 / correlation - 1
    theirs = stats.beta.ppf(shares, mean * total, (1 - mean) * total)
    assert np.abs(beta_quantiles(shares, mean, correlation) - theirs).max() < 2e-3
    # A mean of its own for each, as yards have within a winter.
    means = np.linspace(0.2, 0.9, 25)
    theirs = stats.beta.ppf(shares, means * total, (1 - means) * total)
    assert np.abs(beta_quantiles(shares, means, correlation) - theirs).max() < 5e-3


def test_none_and_all_stay_put_and_no_correlation_leaves_the_mean():
    assert beta_quantiles([0.1, 0.9], 0, 0.1).tolist() == [0, 0]
    assert beta_quantiles([0.1, 0.9], 1, 0.1).tolist() == [1, 1]
    assert beta_quantiles([0.1, 0.9], [0.0, 1.0], 0.1).tolist() == [0, 1]
    assert beta_quantiles([0.1, 0.9], 0.4, 0).tolist() == [0.4, 0.4]


@settings(max_examples=60, deadline=None)
@given(st.integers(0, 200), st.floats(0, 1), st.floats(0.001, 0.999))
def test_binomial_quantiles_are_scipys(trials, chance, share):
    ours = int(binomial_quantiles([share], trials, [chance])[0])
    near = {int(stats.binom.ppf(share + nudge, trials, chance)) for nudge in (-1e-7, 0, 1e-7)}
    assert ours in near


@settings(max_examples=60, deadline=None)
@given(st.integers(0, 60), st.floats(0, 1), st.floats(0, 1), st.floats(0.001, 0.999))
def test_the_same_luck_with_more_chance_never_gives_fewer(trials, low, high, share):
    low, high = sorted((low, high))
    few, many = binomial_quantiles([share, share], trials, [low, high])
    assert few <= many <= trials


def test_none_of_nothing():
    assert binomial_quantiles([0.5, 0.5], 0, [0.3, 0.9]).tolist() == [0, 0]
    assert binomial_quantiles([0.5, 0.5], [0, 4], [1.0, 1.0]).tolist() == [0, 4]


def test_log_normals_have_a_mean_of_one_and_none_a_spread_of_none():
    shares = (np.arange(2000) + 0.5) / 2000
    factors = log_normals(shares, 0.4)
    assert factors.mean() == pytest.approx(1, abs=0.005)
    assert np.log(factors).std() == pytest.approx(0.4, abs=0.005)
    assert log_normals(shares, 0).tolist() == [1.0] * 2000
