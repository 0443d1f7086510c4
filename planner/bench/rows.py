"""The rows of the bench: which figures there are, how each is made of measurements, and its target.

Takes a Runner; gives Figures as they are found. A row whose measurement did not end, or whose way of solving is not
there, gives none.
"""

import inspect
import statistics
from functools import partial

from planner.bench import trials
from planner.bench.building import building
from planner.bench.figures import Figure
from planner.bench.tasks import (
    linear_forms,
    naive,
    naive_sizes,
    pooled_order_in_naive,
    pooled_size,
    product,
)
from planner.solution import solve

TIMES, SHARE = "times", "share"


def against_naive(runner):
    """The small and the medium operation against one balance a part, place, period and scenario."""
    scale = runner.scale
    name = f"{scale.small.name}, {scale.few} scenarios"
    make = partial(Figure, bench="against-naive", unit=TIMES)
    small = runner.instance(scale.small, scale.few)
    pooled, form = (runner.result(task, instance=small) for task in (pooled_size, naive_sizes))
    if pooled and form:
        sizes = (
            f"{form['variables']:,} × {form['rows']:,} against {pooled['variables']:,} × {pooled['rows']:,}; "
            f"{form['lean']:,} variables where parts are told only where anything touches them"
        )
        ratio = form["variables"] / pooled["variables"]
        yield make(figure=f"{name}: fewer variables ({sizes})", value=ratio, target=">= 100")
    if not scale.long_runs:
        return
    yield from _time_against_naive(runner, make, scale.small, "cbc", ">= 60")
    yield from _time_against_naive(runner, make, scale.small, "highs", ">= 40")
    yield from _time_against_naive(runner, make, scale.medium, "highs", ">= 200")


def _time_against_naive(runner, make, size, solver, target):
    scale = runner.scale
    instance = runner.instance(size, scale.few)
    ours = runner.seconds(product, instance=instance)
    if ours is None:
        return
    spent, stopped = [], False
    for _ in range(scale.repeats):
        found = runner.result(
            naive, instance=instance, solver=solver, seconds=scale.naive_seconds, or_stopped=True
        )
        if found is None:
            return
        spent.append(found["seconds"])
        stopped = not found["done"]
        if stopped:
            break
    bound = f", at least: the naive form was stopped after {spent[-1]:.0f} s" if stopped else ""
    words = {"cbc": "CBC", "highs": "HiGHS"}[solver]
    what = f"{size.name}, {scale.few} scenarios: total time of the naive form by {words} against ours{bound}"
    yield make(figure=what, value=statistics.median(spent) / ours, target=target)


def yard_form(runner):
    """The yard form beside the naive one, and the pooled order held in the naive form."""
    instance = runner.instance(runner.scale.small, runner.scale.of_forms)
    name = f"{instance.size.name}, {instance.scenarios} scenarios"
    make = partial(Figure, bench="yard-form", unit=SHARE)
    found = runner.result(linear_forms, instance=instance)
    if found and None not in found.values():
        for key, target, words in (
            ("", "<= 0.0015", "LP of the yard form against the naive LP"),
            ("free_", "<= 1e-6", "the same where hauling is free"),
        ):
            gap = abs(found[f"{key}naive"] - found[f"{key}yard"]) / max(1.0, abs(found[f"{key}naive"]))
            yield make(figure=f"{name}: {words}", value=gap, target=target)
    instance = runner.instance(runner.scale.small, runner.scale.of_orders)
    name = f"{instance.size.name}, {instance.scenarios} scenarios"
    held = runner.result(pooled_order_in_naive, instance=instance, seconds=runner.scale.naive_seconds)
    if held and None not in held.values():
        loss = (held["bound"] - held["held"]) / max(1.0, abs(held["bound"]))
        what = f"{name}: pooled order held in the naive form loses at most, by the naive form's bound"
        yield make(figure=what, value=max(loss, 0.0), target="<= 0.005")


def growth_by_yards(runner):
    """Six yards to forty, as many colonies at each."""
    scale = runner.scale
    make = partial(Figure, bench="growth-by-yards", unit=TIMES)
    name = f"{scale.small.yards} to {scale.wide.yards} yards"
    sizes = [partial(runner.instance, size, scale.few) for size in (scale.small, scale.wide)]
    columns = runner.growth(pooled_size, *sizes, of=lambda found: found["variables"])
    if columns is not None:
        what = f"{name}: pooled columns, {scale.few} scenarios"
        yield make(figure=what, value=columns, target="<= 1.25")
    count = scale.hundred if scale.long_runs else scale.few
    sizes = [partial(runner.instance, size, count) for size in (scale.small, scale.wide)]
    time = runner.growth(product, *sizes, of=lambda found: found["seconds"] / count)
    if time is not None:
        what = f"{name}: time a scenario, {count} scenarios"
        yield make(figure=what, value=time, target="<= 1.5")


def growth_by_scenarios(runner):
    """A hundred scenarios to a thousand."""
    scale = runner.scale
    if not scale.long_runs:
        return
    for size in (scale.medium, scale.large):
        counts = [partial(runner.instance, size, count) for count in (scale.hundred, scale.many)]
        time = runner.growth(product, *counts, of=lambda found: found["seconds"])
        if time is not None:
            what = f"{scale.hundred} to {scale.many:,} scenarios, {size.name}: time"
            yield Figure(bench="growth-by-scenarios", figure=what, value=time, unit=TIMES, target="<= 9")


def two_phase(runner):
    """Cuts in two phases against one direct solve of the same pooled form, the faster of two solvers."""
    if "way" not in inspect.signature(solve).parameters:
        return
    scale = runner.scale
    cases = ((scale.small, ">= 4"), (scale.medium, ">= 8"), (scale.large, ">= 5"))
    for size, target in cases if scale.long_runs else cases[2:]:
        instance = runner.instance(size, scale.several)
        ours = runner.seconds(product, instance=instance, way="two-phase")
        if ours is None:
            continue
        direct, bound = _faster_direct(runner, instance)
        if direct is None:
            continue
        what = f"{size.name}, {scale.several} scenarios: one direct solve against two phases{bound}"
        yield Figure(bench="two-phase", figure=what, value=direct / ours, unit=TIMES, target=target)


def _faster_direct(runner, instance):
    """(seconds, words): the faster solver's, or a lower bound where neither ended."""
    spent: list[float] = []
    stopped: list[float] = []
    for solver in ("highs", "cbc"):
        found = [
            runner.result(product, instance=instance, way="direct", solver=solver)
            for _ in range(runner.scale.repeats)
        ]
        if None in found:
            continue
        median = statistics.median(row["seconds"] for row in found)
        (spent if all(row["done"] for row in found) else stopped).append(median)
    if spent:
        return min(spent), ""
    if len(stopped) == 2:
        return min(stopped), f", at least: no direct solve ended within {min(stopped):.0f} s"
    return None, ""


def by_dicts(runner):
    """Building the programme from dicts and handing it over whole, against the plain way."""
    scale = runner.scale
    make = partial(Figure, bench="building", unit=TIMES)
    instance = runner.instance(scale.medium, scale.hundred)
    found = [runner.result(building, instance=instance) for _ in range(max(3, scale.repeats))]
    found = [row for row in found if row]
    if not found:
        return
    name = f"{instance.size.name}, {instance.scenarios} scenarios"
    for key, words in (("_rows", "writing the rows and handing over"), ("", "the same, terms worked out")):
        ratio = statistics.median(row[f"plain{key}"] / row[f"product{key}"] for row in found)
        yield make(figure=f"{name}: {words}, plain PuLP against ours", value=ratio, target=">= 2")


ROWS = {  # the short ones first: what the quick bench has time for
    "building": by_dicts,
    "against-naive": against_naive,
    "yard-form": yard_form,
    "order-quality": trials.order_quality,
    "two-phase": two_phase,
    "growth-by-yards": growth_by_yards,
    "growth-by-scenarios": growth_by_scenarios,
}
