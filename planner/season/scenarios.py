"""Ways the year may go: winters, summers, flows and splits, drawn by a seeded Latin hypercube.

Takes the operation, the assumptions, how many and a seed; gives scenarios of equal probability. A winter has an
effect common to all yards and one of each yard (beta), and the colonies' own luck (binomial) on top; a summer's loss
likewise. A flow's gain has a factor of the year, of the window and of the yard, log-normal with mean 1. Each matter has
a stream of its own: another answer about the summer leaves winters and flows as they were. Other seeds give fresh,
independent sets, to judge an order on seasons it was not made for.
"""

import datetime as dt
import math
from collections.abc import Mapping
from dataclasses import dataclass, field

import numpy as np

from planner.season.calendar import day_of, summer_left, summers_end_first, turns_of
from planner.season.chances import beta_quantiles, binomial_quantiles, layers, log_normals

# Correlation of two colonies' fates within a yard, on top of the winter's own (survival.py says where that is from).
YARD_CORRELATION = 0.03
SUMMER_CORRELATION = 0.03
SPLIT_CORRELATION = 0.03

# How hard a winter is for a colony of this strength, as a power of its survival: judgement.
HARDSHIP = {"strong": 0.8, "fair": 1.0, "weak": 1.5}

# The best and the worst of ten years lie 3.08 standard deviations apart on average (order statistics of the normal).
SPAN_OF_TEN = 3.08

# The third of years the flow so far speaks for.
THIRDS = {"unknown": (0.0, 1.0), "behind": (0.0, 1 / 3), "usual": (1 / 3, 2 / 3), "ahead": (2 / 3, 1.0)}

WINTERS, SUMMERS, FLOWS, SPLITS = range(4)  # streams


@dataclass(frozen=True, kw_only=True)
class SeasonScenario:
    """By (yard, hive set, strength): colonies that come through the winter, die or are united in summer, of those that
    stand then; by yard the share of wintered colonies; `flow` factors by (yard, window name)."""

    code: str
    probability: float
    survivors: Mapping[tuple[str, str, str], int]
    flow: Mapping[tuple[str, str], float]
    year_flow: float
    split_success: float
    summer_dead: Mapping[tuple[str, str, str], int] = field(default_factory=dict)
    united: Mapping[tuple[str, str, str], int] = field(default_factory=dict)
    winter_share: Mapping[str, float] = field(default_factory=dict)


def draw(operation, assumptions, *, count, seed):
    """`count` scenarios of equal probability; the same seed gives the same."""
    if count < 1:
        raise ValueError(f"At least one season must be drawn, not {count}.")
    streams = [np.random.default_rng([seed, stream]) for stream in (WINTERS, SUMMERS, FLOWS, SPLITS)]
    shares = _winter_shares(operation, assumptions, count, streams[WINTERS])
    survivors, dead, united = _lives(operation, assumptions, count, streams, shares)
    year, flow = _flows(operation, assumptions, count, streams[FLOWS])
    success = beta_quantiles(layers(streams[SPLITS], count), assumptions.split_success, SPLIT_CORRELATION)
    return tuple(
        SeasonScenario(
            code=f"s{number + 1:04d}",
            probability=1 / count,
            survivors=_of(survivors, number),
            flow={window: float(factors[number]) for window, factors in flow.items()},
            year_flow=float(year[number]),
            split_success=float(success[number]),
            summer_dead=_of(dead, number),
            united=_of(united, number),
            winter_share={yard: float(share[number]) for yard, share in shares.items()},
        )
        for number in range(count)
    )


def _of(counts, number):
    return {group: int(rows[number]) for group, rows in counts.items()}


def _winter_shares(operation, assumptions, count, rng):
    """The share of ordinary colonies that come through, by yard: the year's, then the yard's own about it."""
    years = beta_quantiles(layers(rng, count), assumptions.survival_share, assumptions.winter_correlation)
    still = still_to_die(operation, assumptions)
    codes = sorted({yard.code for yard in operation.yards} | {group.yard for group in operation.colonies})
    drawn = {code: beta_quantiles(layers(rng, count), years, YARD_CORRELATION) for code in codes}
    return {code: still(share) for code, share in drawn.items()}


def still_to_die(operation, assumptions):
    """Turns the share that comes through a whole winter into that of the colonies alive in its midst: those found dead
    of it already are among those it was going to take. Counted after the winter, all that live came through."""
    turns = turns_of(assumptions)
    if turns.winter >= turns.autumn:
        return lambda share: share
    if assumptions.winter_counted:
        return np.ones_like
    began = day_of(assumptions.start, turns.autumn) - dt.timedelta(weeks=assumptions.weeks)
    found = sum(count for day, count in operation.so_far.dead if began <= day)
    alive = sum(group.colonies for group in operation.colonies)
    return lambda share: np.minimum(1.0, share * (1 + found / max(1, alive)))


def _lives(operation, assumptions, count, streams, winter_shares):
    """Survivors, summer dead and united by group, each out of those that stand when it comes."""
    groups = operation.colonies
    colonies = sum(group.colonies for group in groups)
    average = sum(HARDSHIP.get(g.strength, 1.0) * g.colonies for g in groups) / max(1, colonies) or 1.0
    ahead = assumptions.summer_loss_share * summer_left(assumptions)
    losses = beta_quantiles(layers(streams[SUMMERS], count), ahead, SUMMER_CORRELATION)
    together = assumptions.summer_united_share
    dead_share = losses * (1 - together)
    of_rest = np.divide(
        losses * together, 1 - dead_share, out=np.zeros_like(losses), where=dead_share < 1 - 1e-12
    )
    summer_first = summers_end_first(assumptions)
    survivors, dead, united = {}, {}, {}
    for group in groups:
        key = group.yard, group.hive_set, group.strength
        share = winter_shares[group.yard] ** (HARDSHIP.get(group.strength, 1.0) / average)
        luck = (
            layers(streams[WINTERS], count),
            layers(streams[SUMMERS], count),
            layers(streams[SUMMERS], count),
        )
        standing = np.full(count, group.colonies)
        if not summer_first:
            survivors[key] = standing = binomial_quantiles(luck[0], standing, share)
        dead[key] = binomial_quantiles(luck[1], standing, dead_share)
        united[key] = binomial_quantiles(luck[2], standing - dead[key], of_rest)
        if summer_first:
            survivors[key] = binomial_quantiles(luck[0], standing - dead[key] - united[key], share)
    return survivors, dead, united


def _flows(operation, assumptions, count, rng):
    sigma_year = year_sigma(assumptions)
    low, high = THIRDS[assumptions.flow_so_far]
    year = log_normals(low + (high - low) * layers(rng, count), sigma_year)
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
