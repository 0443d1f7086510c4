"""Means with their reach, worst shares, spans and rounding; Student's t against scipy's."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from planner.trial.statistics import (
    bearing_step,
    mean_of,
    rounded,
    span_of,
    t_quantile,
    t_share,
    worst_mean,
)

SAMPLES = st.lists(st.floats(-1e5, 1e5), min_size=2, max_size=60)


@pytest.mark.parametrize("freedom", [1, 2, 3, 4, 5, 8, 9, 29, 30, 99, 299, 999])
@pytest.mark.parametrize("share", [0.025, 0.5, 0.6, 0.9, 0.95, 0.975, 0.999])
def test_the_t_quantile_is_scipys(share, freedom):
    assert t_quantile(share, freedom) == pytest.approx(stats.t.ppf(share, freedom), rel=1e-8, abs=1e-8)


@given(st.floats(-50, 50), st.integers(1, 400))
def test_the_share_below_is_scipys(value, freedom):
    assert t_share(value, freedom) == pytest.approx(stats.t.cdf(value, freedom), abs=1e-10)


def test_a_mean_reaches_as_far_as_students_t_says():
    values = [3.0, 5.0, 4.0, 8.0]
    found = mean_of(values)
    low, high = stats.t.interval(0.95, 3, loc=5.0, scale=stats.sem(values))
    assert (found.low, found.high) == (pytest.approx(low), pytest.approx(high))


def test_nineteen_samples_of_twenty_hold_the_true_mean():
    """A thousand samples of a known law: the share that holds its mean lies within four errors of 0.95."""
    rng = np.random.default_rng(7)
    held = [
        abs(mean_of(sample).value - 2) <= mean_of(sample).reach for sample in rng.normal(2, 5, (1000, 12))
    ]
    assert abs(np.mean(held) - 0.95) < 4 * math.sqrt(0.95 * 0.05 / 1000)


def test_of_one_season_nothing_is_known_beyond_itself():
    assert mean_of([7.0]).reach == math.inf


def test_the_worst_share_counts_only_the_part_of_a_season_within_it():
    assert worst_mean([4, 1, 3, 2], 0.25) == 1
    assert worst_mean([4, 1, 3, 2], 0.375) == pytest.approx((0.25 * 1 + 0.125 * 2) / 0.375)
    assert worst_mean([10, 0], 0.5, chances=[0.9, 0.1]) == pytest.approx((0.1 * 0 + 0.4 * 10) / 0.5)


@given(SAMPLES, st.floats(0.01, 1.0))
def test_the_worst_share_is_never_above_the_mean_and_never_below_the_least(values, share):
    slack = 1e-6 * (1 + max(map(abs, values)))
    assert min(values) - slack <= worst_mean(values, share) <= np.mean(values) + slack


@given(SAMPLES, st.floats(0.01, 1.0))
def test_the_worst_share_is_rockafellars_and_uryasevs_most(values, share):
    """Rockafellar and Uryasev, Optimization of conditional value-at-risk, Journal of Risk 2 (2000) 21-41: the most
    over a mark of mark - mean shortfall / share, found at one of the values."""
    sample = np.array(values)
    most = max(mark - np.maximum(mark - sample, 0).mean() / share for mark in values)
    assert worst_mean(values, share) == pytest.approx(most, rel=1e-9, abs=1e-6)


def test_a_span_holds_its_share_of_the_seasons():
    values = np.arange(1001)
    low, high = span_of(values)
    assert (low, high) == pytest.approx((25, 975))


@pytest.mark.parametrize(
    ("reach", "step"), [(0.2, 1), (1, 1), (4.9, 1), (5, 5), (37, 10), (60, 50), (263, 100), (math.inf, 1)]
)
def test_a_figure_is_rounded_to_what_its_reach_bears(reach, step):
    assert bearing_step(reach) == step


def test_rounding_keeps_what_can_be_told():
    assert (rounded(1183.4, 37), rounded(1183.4, 60), rounded(-12.3, 4)) == (1180, 1200, -12)
