"""The statistical gap: how much better than this order the best one could be, over all seasons that may come.

Takes the gaps of several batches (the batch's own best order less this order, on that batch); gives their mean and
the one-sided 19-in-20 limit by Student's t. Mak, Morton and Wood, Monte Carlo bounding techniques for determining
solution quality in stochastic programs, Operations Research Letters 24 (1999) 47-56.
"""

import math
from dataclasses import dataclass

import numpy as np

from planner.trial.judging import still, value_of
from planner.trial.statistics import LEVEL, t_quantile


@dataclass(frozen=True, kw_only=True)
class StatisticalGap:
    """In money a season; `most` is met or not exceeded 19 times of 20."""

    mean: float
    most: float
    batches: int
    seasons: int  # in a batch

    def share_of(self, worth):
        """The limit as a share of a worth."""
        return self.most / max(1.0, abs(worth))


def limit_of(gaps, *, level=LEVEL):
    """(mean, one-sided upper limit) of the batches' gaps."""
    gaps = np.asarray(gaps, dtype=float)
    mean, count = float(gaps.mean()), len(gaps)
    if count < 2:
        return mean, math.inf
    return mean, mean + t_quantile(level, count - 1) * float(gaps.std(ddof=1)) / math.sqrt(count)


def statistical_gap(fresh, worths, *, solve, most_batches=5, enough=lambda batches: False, breathe=still):
    """The gap from batches of fresh seasons: `worths` are the order's on all of them. A batch's best is taken at its
    proven bound, so a solve that stopped early makes the gap larger, never smaller. None under two batches."""
    gaps: list[float] = []
    sizes: list[int] = []
    for number, (first, end) in enumerate(fresh.batches[:most_batches]):
        if enough(len(gaps)):
            break
        breathe()
        batch = fresh.batch(number)
        best = solve(batch, prices=False)
        if best.bound is None:
            continue
        gaps.append(max(0.0, best.bound - value_of(worths[first:end], batch.bad_years)))
        sizes.append(end - first)
    if len(gaps) < 2:
        return None
    mean, most = limit_of(gaps)
    return StatisticalGap(mean=mean, most=most, batches=len(gaps), seasons=min(sizes))
