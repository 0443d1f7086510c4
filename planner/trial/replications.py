"""The statistical gap: how much better than this order the best one could be, over all seasons that may come.

Takes the gaps of several batches (the batch's own best order less this order, on that batch); gives their mean and
the one-sided 19-in-20 limit by Student's t. Mak, Morton and Wood, Monte Carlo bounding techniques for determining
solution quality in stochastic programs, Operations Research Letters 24 (1999) 47-56.
"""

import math
from dataclasses import dataclass

import numpy as np

from planner.sizing.records import Problem
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


@dataclass(frozen=True, kw_only=True)
class Batch:
    """Fresh seasons of their own, equally likely, and the order's worth in each."""

    problem: Problem
    worths: tuple[float, ...]


def statistical_gap(batches, *, solve, enough=lambda batches: False, breathe=still):
    """The gap from independent batches. A batch's best is taken at its proven bound, so a solve that stopped early
    makes the gap larger, never smaller; so do few seasons, whose own best suits them too well. None under two
    batches; after each `enough(batches so far)` may end it."""
    gaps: list[float] = []
    sizes: list[int] = []
    for batch in batches:
        breathe()
        best = solve(batch.problem, prices=False)
        if best.bound is not None:
            gaps.append(max(0.0, best.bound - value_of(batch.worths, batch.problem.bad_years)))
            sizes.append(len(batch.worths))
        if enough(len(gaps)):
            break
    if len(gaps) < 2:
        return None
    mean, most = limit_of(gaps)
    return StatisticalGap(mean=mean, most=most, batches=len(gaps), seasons=min(sizes))
