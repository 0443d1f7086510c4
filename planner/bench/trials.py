"""How good the orders are: this order tried on fresh seasons against the netted rule of thumb, nothing, the mean season.

Takes a Runner; gives Figures, each the worst of its seeds. The trial itself is planner.trial's.
"""

import math
from functools import partial

from apiary.bench.figures import Figure
from apiary.bench.measuring import Stopwatch
from planner.bench.instances import Size, season_problem
from planner.bench.tasks import GAP
from planner.season.scenarios import draw
from planner.solution import solve
from planner.trial import Effort, trial_of

DEMO = Size(yards=8, colonies=110)  # as many as the demo's
BATCHES, BATCH_SEASONS = 10, 100  # for the statistical gap, beside the fresh seasons
FINE = GAP / 5  # what a batch's best is proven to: what it leaves open counts as if an order could earn it
PLANNING_SHARE = 0.3  # of the time, the rest is for the trial
LONGER = 4  # times a run's seconds: a trial plans a dozen times


def trial(*, instance, fresh, seconds, batches=BATCHES, batch_seasons=None, batch_gap=None):
    """Means of the orders over fresh seasons, the least gain over the mean season's order, the statistical gap."""
    watch = Stopwatch(seconds)
    operation = instance.operation()
    answers = instance.answers(operation)
    scenarios = draw(operation, answers, count=instance.scenarios, seed=instance.seed)
    problem = season_problem(operation, scenarios=instance.scenarios, seed=instance.seed)
    plan = solve(problem, gap=GAP, seconds=PLANNING_SHARE * seconds, prices=False)
    if not plan.is_order or plan.gap is None or plan.gap > GAP + 1e-9:
        return {"done": False}
    effort = Effort(
        count=fresh,
        seed=instance.seed,
        gap=GAP,
        seconds=seconds,
        left=watch.left,
        solve=solve,
        other_seed=False,
        batches=batches,
        batch_seasons=batch_seasons,
        batch_gap=batch_gap,
    )
    found = trial_of(operation, answers, problem, plan.packs(), scenarios=scenarios, effort=effort)
    return {"done": True, **_numbers(found)}


def _numbers(found):
    numbers = {"seasons": found.seasons}
    for key in ("ours", "rule", "nothing"):
        contender = found.contender(key)
        numbers[key] = None if contender is None else contender.mean.value
    mean = found.contender("mean")
    numbers["over_mean_low"] = None if mean is None else found.ours.over(mean).low
    numbers["gap"] = None if found.gap is None else found.gap.share_of(found.ours.mean.value)
    return numbers


def order_quality(runner):
    """Each size on each seed, an operation of the demo's size first."""
    scale = runner.scale
    cases = (
        (DEMO, "<= 0.004"),
        (scale.small, "<= 0.004"),
        (scale.medium, "<= 0.0015"),
        (scale.large, "<= 0.0015"),
    )
    for size, target in cases if scale.long_runs else cases[:1]:
        tried = []
        for seed in scale.trial_seeds:
            instance = runner.instance(size, scale.hundred, seed)
            found = runner.result(trial, instance=instance, fresh=scale.fresh, **_effort(scale))
            if found and not found["done"]:
                runner.tell(f"left out, no order was proven in time: trial of {size.name}, seed {seed}")
            elif found:
                tried.append(found)
        if tried:
            yield from _figures(size, tried, target, surely=size.colonies >= scale.medium.colonies)


def _effort(scale):
    """Batches of their own where there is time for them, else the fresh seasons parted."""
    if not scale.long_runs:
        return {"batches": BATCHES // 2}
    return {"batch_gap": FINE, "batch_seasons": BATCH_SEASONS, "seconds": LONGER * scale.run_seconds}


def _figures(size, tried, target, *, surely):
    many = f"worst of {len(tried)} seeds" if len(tried) > 1 else "one seed"
    name = f"{size.name}, {min(row['seasons'] for row in tried):,} fresh seasons, {many}"
    make = partial(Figure, bench="order-quality")
    gains = [row["ours"] / row["rule"] - 1 for row in tried if (row["rule"] or 0) > 0]
    if gains:
        yield make(
            figure=f"{name}: over the netted rule's contribution",
            value=min(gains),
            unit="share",
            target=">= 0.09",
        )
    adds = [_times_what_the_rule_adds(row) for row in tried if None not in (row["rule"], row["nothing"])]
    if adds and min(adds) < math.inf:
        what = f"{name}: what it adds over buying nothing, to what the rule adds"
        yield make(figure=what, value=min(adds), unit="times", target=">= 1.9")
    lows = [row["over_mean_low"] for row in tried if row["over_mean_low"] is not None]
    if lows and surely:
        what = f"{name}: least gain over the mean season's order, 19 times of 20"
        yield make(figure=what, value=min(lows), unit="money", target="> 0")
    gaps = [row["gap"] for row in tried if row["gap"] is not None]
    if gaps:
        what = f"{name}: statistical gap (Mak, Morton and Wood), 19 times of 20 at most"
        yield make(figure=what, value=max(gaps), unit="share", target=target)


def _times_what_the_rule_adds(row):
    """Endless where the rule adds nothing."""
    added = row["rule"] - row["nothing"]
    return (row["ours"] - row["nothing"]) / added if added > 0 else math.inf
