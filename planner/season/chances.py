"""Quantiles to draw by: layers of a Latin hypercube turned into beta, log-normal and binomial numbers.

Takes numbers in (0, 1); gives one outcome each. The same numbers give the same luck whatever the answers are, so that
two orders, or two sets of answers, are compared on the same seasons. Draws nothing itself but the layers.
"""

import math
from statistics import NormalDist

import numpy as np

GRID, FINE_GRID = 801, 4001
WIDEST = 20.0  # log-odds


def layers(rng, count):
    """`count` numbers in (0, 1), one in each of `count` equal layers, shuffled: one axis of a Latin hypercube."""
    return (rng.permutation(count) + rng.random(count)) / count


def beta_quantiles(shares, mean, correlation):
    """Quantiles of the beta distribution with that mean (one, or one a share) whose draws correlate so.

    A mean of 0 or 1 stays put, a correlation of 0 leaves the mean as it is.
    """
    shares = np.atleast_1d(np.asarray(shares, dtype=float))
    means = np.broadcast_to(np.clip(np.asarray(mean, dtype=float), 0, 1), shares.shape)
    found = np.array(means)
    open_ = (means > 1e-6) & (means < 1 - 1e-6)
    if correlation <= 0 or not open_.any():
        return found
    total = 1 / correlation - 1
    a, b = means[open_] * total, (1 - means[open_]) * total
    if np.ptp(means[open_]) == 0:
        odds, below = _below(a[:1], b[:1], FINE_GRID)
        at = np.interp(shares[open_], below[0], odds)
    else:
        odds, below = _below(a, b, GRID)
        at = np.array([np.interp(share, row, odds) for share, row in zip(shares[open_], below, strict=True)])
    found[open_] = 1 / (1 + np.exp(-at))
    return found


def _below(a, b, grid):
    """A grid of log-odds and, a row for each a and b, how much of the beta lies below each of them.

    Beyond the grid the density is a plain power, whose part is added: it is most of it where a or b is small.
    """
    odds, step = np.linspace(-WIDEST, WIDEST, grid, retstep=True)
    log_share, log_rest = -np.log1p(np.exp(-odds)), -np.log1p(np.exp(odds))
    log_weight = np.outer(a, log_share) + np.outer(b, log_rest)
    highest = log_weight.max(axis=1, keepdims=True)
    weight = np.exp(log_weight - highest)
    under = weight[:, :1] / (a[:, None] * step)
    over = weight[:, -1:] / (b[:, None] * step)
    below = under + np.cumsum(weight, axis=1) - weight / 2
    return odds, below / (under + weight.sum(axis=1, keepdims=True) + over)


def binomial_quantiles(shares, trials, chances):
    """How many of so many trials come off: one whole number a share; more chance never gives fewer."""
    shares, chances = np.asarray(shares, dtype=float), np.clip(np.asarray(chances, dtype=float), 0, 1)
    trials = np.broadcast_to(np.asarray(trials, dtype=int), shares.shape)
    most = int(trials.max(initial=0))
    if most == 0:
        return np.zeros(shares.shape, dtype=int)
    done = np.arange(most + 1)
    gamma = np.array([math.lgamma(n + 1) for n in range(most + 1)])
    left = np.clip(trials[:, None] - done, 0, None)
    ways = gamma[trials][:, None] - gamma[done] - gamma[left]
    inner = np.clip(chances, 1e-12, 1 - 1e-12)[:, None]
    log_mass = ways + done * np.log(inner) + left * np.log1p(-inner)
    mass = np.where(done <= trials[:, None], np.exp(log_mass), 0.0)
    below = np.cumsum(mass, axis=1)
    found = (below < shares[:, None] * below[:, -1:]).sum(axis=1)
    found = np.where(chances <= 0, 0, np.where(chances >= 1, trials, found))
    return np.minimum(found, trials)


def log_normals(shares, sigma):
    """Log-normal factors of mean 1 at these quantiles."""
    if sigma == 0:
        return np.ones(len(shares))
    normal = NormalDist()
    z = np.array([normal.inv_cdf(min(max(share, 1e-9), 1 - 1e-9)) for share in shares])
    return np.exp(sigma * z - sigma**2 / 2)
