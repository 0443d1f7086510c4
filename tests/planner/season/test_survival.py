"""The keeper's own winters: fitted as the published example is, and held towards the surveys while they are few."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import optimize, stats

from planner.season.survival import (
    WINTER_CORRELATION,
    Fit,
    by_moments,
    fitted,
    log_likelihood,
    log_odds,
    most_likely,
)

# Boys among the first 12 children of 6,115 families: Geissler (1889), in Lindsey and Altham (1998), Applied Statistics
# 47:149-157. Printed fits: 34.09558 and 31.5715 by likelihood, 34.135 and 31.6085 by moments.
GEISSLER = [3, 24, 104, 286, 670, 1033, 1343, 1112, 829, 478, 181, 45, 7]
FAMILIES = [(12, boys, families) for boys, families in enumerate(GEISSLER)]
FIVE = [(60, 40), (72, 58), (70, 39), (80, 66), (75, 52)]

WINTERS = st.lists(
    st.integers(1, 300).flatmap(lambda n: st.tuples(st.just(n), st.integers(0, n))), min_size=1, max_size=8
)


def test_the_published_example_is_fitted_by_likelihood():
    fit = most_likely(FAMILIES)
    assert fit.alpha == pytest.approx(34.09558, abs=0.01)
    assert fit.beta == pytest.approx(31.5715, abs=0.01)
    assert log_likelihood(FAMILIES, fit.alpha, fit.beta) == pytest.approx(-12492.9, abs=0.05)
    assert 4 - 2 * log_likelihood(FAMILIES, fit.alpha, fit.beta) == pytest.approx(24989.74, abs=0.01)


def test_the_published_example_is_fitted_by_moments():
    fit = by_moments(FAMILIES)
    assert fit.alpha == pytest.approx(34.135, abs=5e-4)
    assert fit.beta == pytest.approx(31.6085, abs=5e-4)


def test_moments_that_swing_less_than_chance_tell_nothing():
    assert by_moments([(10, 5), (10, 5), (10, 5)]) is None
    assert by_moments([(10, 0), (10, 0)]) is None


@settings(max_examples=50, deadline=None)
@given(WINTERS, st.floats(0.2, 80), st.floats(0.2, 80))
def test_the_likelihood_is_scipys(winters, alpha, beta):
    theirs = sum(stats.betabinom.logpmf(out, into, alpha, beta) for into, out in winters)
    assert log_likelihood(winters, alpha, beta) == pytest.approx(theirs, rel=1e-7, abs=1e-7)


@pytest.mark.parametrize(
    "winters", [FIVE, [(40, 10), (45, 40), (50, 22)], [(200, 180), (190, 120), (210, 60)]]
)
def test_the_best_fit_is_the_one_scipy_finds(winters):
    def minus(point):
        fit = Fit(
            share=1 / (1 + 2.718281828459045 ** -point[0]),
            correlation=1 / (1 + 2.718281828459045 ** -point[1]),
        )
        return -sum(stats.betabinom.logpmf(out, into, fit.alpha, fit.beta) for into, out in winters)

    theirs = optimize.minimize(
        minus, (0.5, -2.0), method="Nelder-Mead", options={"xatol": 1e-7, "fatol": 1e-10}
    )
    ours = most_likely(winters)
    assert log_odds(ours.share) == pytest.approx(theirs.x[0], abs=1e-3)
    assert log_odds(ours.correlation) == pytest.approx(theirs.x[1], abs=1e-3)


def test_without_winters_the_published_figures_stand():
    assert fitted((), share=0.7) == Fit(share=0.7, correlation=WINTER_CORRELATION)


@settings(max_examples=40, deadline=None)
@given(WINTERS, st.floats(0, 1))
def test_any_winters_give_a_share_between_and_a_swing(winters, share):
    fit = fitted(winters, share=share)
    assert 0 < fit.share < 1
    assert 0 < fit.correlation < 1


def test_one_winter_moves_the_share_a_little_and_ten_alike_nearly_all_the_way():
    one, ten = (fitted([(60, 54)] * count, share=0.7).share for count in (1, 10))
    assert 0.7 < one < 0.8
    assert 0.85 < ten < 0.9


@pytest.mark.parametrize(("out", "side"), [(0, -1), (60, 1)])
def test_a_winter_that_took_all_or_none_moves_the_share_without_taking_it_to_the_edge(out, side):
    fit = fitted([(60, out)], share=0.7)
    assert (fit.share - 0.7) * side > 0.05
    assert 0.4 < fit.share < 0.9


def test_winters_that_swing_widely_are_believed():
    calm = fitted([(100, 70), (100, 72), (100, 69), (100, 71)], share=0.7).correlation
    wild = fitted([(100, 95), (100, 20), (100, 90), (100, 40)], share=0.7).correlation
    assert calm < WINTER_CORRELATION < wild


def test_many_winters_are_fitted_as_if_alone():
    many = [(80, int(80 * share)) for share in stats.beta.ppf([(i + 0.5) / 200 for i in range(200)], 9, 3)]
    alone, held = most_likely(many), fitted(many, share=0.5)
    assert held.share == pytest.approx(alone.share, abs=0.01)
    assert held.correlation == pytest.approx(alone.correlation, rel=0.1)
