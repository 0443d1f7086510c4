"""Ways the year may go: winters, flows and splits, drawn by a seeded Latin hypercube.

Takes the operation, the assumptions, how many and a seed; gives scenarios of equal probability. A winter has an
effect common to all yards and one of each yard (beta), and the colonies' own luck (binomial) on top. A flow's gain
has a factor of the year, of the window and of the yard, log-normal with mean 1.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from statistics import NormalDist

import numpy as np

# Correlation of two colonies' fates: common to the year, and within a yard on top. Together they make the deaths
# of an operation of some 110 colonies vary about ten times as much as independent ones would; implied by the
# confidence intervals printed in the national loss surveys: 6.5 to 14.2 (Brodschneider 2018, Gray 2019, Lee 2015,
# Kulhanek 2017).
WINTER_CORRELATION = 0.075
YARD_CORRELATION = 0.03
SPLIT_CORRELATION = 0.03

# How hard a winter is for a colony of this strength, as a power of its survival: judgement.
HARDSHIP = {"strong": 0.8, "fair": 1.0, "weak": 1.5}

# The best and the worst of ten years lie 3.08 standard deviations apart on average (order statistics of the normal).
SPAN_OF_TEN = 3.08


@dataclass(frozen=True, kw_only=True)
class SeasonScenario:
    """`survivors` by (yard, hive set, strength); `flow` factors by (yard, window name)."""

    code: str
    probability: float
    survivors: Mapping[tuple[str, str, str], int]
    flow: Mapping[tuple[str, str], float]
    year_flow: float
    split_success: float


def draw(operation, assumptions, *, count, seed):
    """`count` scenarios of equal probability; the same seed gives the same."""
    rng = np.random.default_rng(seed)
    survivors = _winters(operation, assumptions, count, rng)
    year, flow = _flows(operation, assumptions, count, rng)
    success = beta_quantiles(layers(rng, count), assumptions.split_success, SPLIT_CORRELATION)
    return tuple(
        SeasonScenario(
            code=f"s{number + 1:04d}",
            probability=1 / count,
            survivors={group: int(alive[number]) for group, alive in survivors.items()},
            flow={window: float(factors[number]) for window, factors in flow.items()},
            year_flow=float(year[number]),
            split_success=float(success[number]),
        )
        for number in range(count)
    )


def layers(rng, count):
    """`count` numbers in (0, 1), one in each of `count` equal layers, shuffled: one axis of a Latin hypercube."""
    return (rng.permutation(count) + rng.random(count)) / count


def beta_quantiles(shares, mean, correlation):
    """Quantiles of the beta distribution with that mean whose draws correlate so; a mean of 0 or 1 stays put."""
    if mean <= 0 or mean >= 1:
        return np.full(len(shares), float(min(max(mean, 0), 1)))
    total = 1 / correlation - 1
    a, b = mean * total, (1 - mean) * total
    x = np.sin(np.linspace(0, math.pi / 2, 4001)[1:-1]) ** 2
    log_density = (a - 1) * np.log(x) + (b - 1) * np.log1p(-x)
    weight = np.exp(log_density - log_density.max()) * np.sqrt(x * (1 - x))
    below = np.cumsum(weight) - weight / 2
    return np.interp(shares, below / weight.sum(), x)


def _winters(operation, assumptions, count, rng):
    groups = operation.colonies
    if not groups:
        return {}
    years = beta_quantiles(layers(rng, count), assumptions.survival_share, WINTER_CORRELATION)
    colonies = sum(group.colonies for group in groups)
    average = sum(HARDSHIP.get(g.strength, 1.0) * g.colonies for g in groups) / max(1, colonies)
    yards = {}
    for yard in sorted({group.yard for group in groups}):
        axis = layers(rng, count)
        yards[yard] = np.array(
            [beta_quantiles(axis[i : i + 1], years[i], YARD_CORRELATION)[0] for i in range(count)]
        )
    survivors = {}
    for group in groups:
        share = yards[group.yard] ** (HARDSHIP.get(group.strength, 1.0) / (average or 1))
        survivors[group.yard, group.hive_set, group.strength] = rng.binomial(group.colonies, share)
    return survivors


def _flows(operation, assumptions, count, rng):
    sigma_year = year_sigma(assumptions)
    year = log_normals(layers(rng, count), sigma_year)
    names = sorted({window.name for yard in operation.yards for window in yard.windows})
    by_name = {name: layers(rng, count) for name in names}
    flow = {}
    for yard in operation.yards:
        for window in yard.windows:
            left = max(0.0, math.log1p(window.spread**2) - sigma_year**2)
            sigma = math.sqrt(left / 2)
            of_window = log_normals(by_name[window.name], sigma)
            of_yard = log_normals(layers(rng, count), sigma)
            flow[yard.code, window.name] = year * of_window * of_yard
    return year, flow


def year_sigma(assumptions):
    """Spread of the year factor's logarithm, from the best and the worst crop of about ten years."""
    if assumptions.crop_worst <= 0:
        return 0.0
    return math.log(assumptions.crop_best / assumptions.crop_worst) / SPAN_OF_TEN


def log_normals(shares, sigma):
    """Log-normal factors of mean 1 at these quantiles."""
    if sigma == 0:
        return np.ones(len(shares))
    normal = NormalDist()
    z = np.array([normal.inv_cdf(min(max(share, 1e-9), 1 - 1e-9)) for share in shares])
    return np.exp(sigma * z - sigma**2 / 2)
