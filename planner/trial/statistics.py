"""What a sample of seasons says of the mean, of bad years and of the spread, and how far each can be trusted.

Takes plain numbers; gives means with their 19-in-20 reach, means of the worst share, quantiles. The t quantile is
worked out here from the finite sums for whole degrees of freedom. Draws nothing.
"""

import math
from dataclasses import dataclass

import numpy as np

LEVEL = 0.95  # 19 of 20


@dataclass(frozen=True, kw_only=True)
class Mean:
    """A mean and how far, 19 times of 20, the true one lies from it at most."""

    value: float
    reach: float
    count: int

    @property
    def low(self):
        return self.value - self.reach

    @property
    def high(self):
        return self.value + self.reach


def mean_of(values, *, level=LEVEL):
    """The mean of a sample, its reach by Student's t; of a single value nothing is known beyond itself."""
    values = np.asarray(values, dtype=float)
    count = len(values)
    if count < 2:
        return Mean(value=float(values.mean()), reach=math.inf, count=count)
    error = float(values.std(ddof=1)) / math.sqrt(count)
    return Mean(value=float(values.mean()), reach=t_quantile((1 + level) / 2, count - 1) * error, count=count)


def worst_mean(values, share, chances=None):
    """Mean of the worst share of seasons: of a season that lies over the edge only the part within counts."""
    values = np.asarray(values, dtype=float)
    chances = np.full(len(values), 1 / len(values)) if chances is None else np.asarray(chances, dtype=float)
    order = np.argsort(values, kind="stable")
    before = np.cumsum(chances[order]) - chances[order]
    taken = np.clip(share - before, 0.0, chances[order])
    return float(taken @ values[order] / taken.sum())


def span_of(values, *, level=LEVEL):
    """(low, high) between which that share of the seasons lies."""
    low, high = np.quantile(np.asarray(values, dtype=float), [(1 - level) / 2, (1 + level) / 2])
    return float(low), float(high)


def t_quantile(share, freedom):
    """The value Student's t stays below with that probability."""
    if share < 0.5:
        return -t_quantile(1 - share, freedom)
    low, high = 0.0, 1.0
    while t_share(high, freedom) < share:
        high *= 2
    for _ in range(200):
        middle = (low + high) / 2
        if middle in (low, high):
            break
        low, high = (middle, high) if t_share(middle, freedom) < share else (low, middle)
    return (low + high) / 2


def t_share(value, freedom):
    """The probability that Student's t with whole degrees of freedom stays below the value.

    P(|t| < v) is a finite sum in the angle arctan(v / √freedom), one form for odd and one for even degrees.
    """
    angle = math.atan2(value, math.sqrt(freedom))
    cosine = math.cos(angle)
    term, total = 1.0, 0.0
    first = 1 if freedom % 2 else 0
    for power in range(first, freedom - 1, 2):
        total += term
        term *= cosine * cosine * (power + 1) / (power + 2)
    if freedom % 2:
        both = 2 / math.pi * (angle + math.sin(angle) * cosine * total)
    else:
        both = math.sin(angle) * total
    return 0.5 + both / 2


def bearing_step(reach):
    """The step to round to so that no figure claims more than the reach bears: 1, 5, 10, 50, 100, …"""
    if not math.isfinite(reach) or reach < 1:
        return 1
    size = 10 ** math.floor(math.log10(reach) + 1e-12)
    return 5 * size if reach >= 5 * size else size


def rounded(value, reach):
    """The value to the step its reach bears."""
    step = bearing_step(reach)
    return round(value / step) * step
