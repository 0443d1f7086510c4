"""The rows of the bench: which figures there are, how each is made of measurements, and its target.

Takes a Runner; gives Figures as they are found. A row whose measurement did not end gives none; the runner says so.
"""

import statistics
from functools import partial

from apiary.bench.figures import Figure
from planner.bench.against import SHARE, SOLVERS, TIMES, against_naive, yard_form
from planner.bench.building import building
from planner.bench.nextdoor import curve_by_cold_solves, curve_by_one_master, pack_by_pack
from planner.bench.plain_files import plain_data
from planner.bench.runner import BEYOND
from planner.bench.sizes import pooled_size, solved_size
from planner.bench.tasks import GAP, direct, product
from planner.bench.trials import order_quality

FINE = 10  # times finer than ours the exact form is solved by which our bound is judged


def growth_by_yards(runner):
    """Six yards to forty, as many colonies at each."""
    scale = runner.scale
    make = partial(Figure, bench="growth-by-yards", unit=TIMES)
    name = f"{scale.small.yards} to {scale.wide.yards} yards"
    sizes = [partial(runner.instance, size, scale.few) for size in (scale.small, scale.wide)]
    for task, words in (
        (solved_size, "columns solved, uses merged"),
        (pooled_size, "columns, no uses merged"),
    ):
        columns = runner.growth(task, *sizes, of=lambda found: found["variables"])
        if columns is not None:
            what = f"{name}: pooled {words}, {scale.few} scenarios ({columns.words('')})"
            yield make(figure=what, value=columns.ratio, target="<= 1.25")
    count = scale.hundred
    sizes = [partial(runner.instance, size, count) for size in (scale.small, scale.wide)]
    time = runner.growth(product, *sizes, of=lambda found: found["seconds"] / count)
    if time is not None:
        what = f"{name}: time a scenario, {count} scenarios ({time.words(' s')})"
        yield make(figure=what, value=time.ratio, target="<= 1.5")


def growth_by_scenarios(runner):
    """A hundred scenarios to a thousand."""
    scale = runner.scale
    for size in (scale.medium, scale.large):
        counts = [partial(runner.instance, size, count) for count in (scale.hundred, scale.many)]
        time = runner.growth(product, *counts, of=lambda found: found["seconds"])
        if time is not None:
            what = f"{scale.hundred} to {scale.many:,} scenarios, {size.name}: time ({time.words(' s')})"
            yield Figure(
                bench="growth-by-scenarios", figure=what, value=time.ratio, unit=TIMES, target="<= 9"
            )


def two_phase(runner):
    """Cuts in two phases against one direct solve of the exact pooled form, the faster of two solvers."""
    scale = runner.scale
    cases = ((scale.small, 4), (scale.medium, 8), (scale.large, 5))
    for size, target in cases if scale.long_runs else cases[:1]:
        instance = runner.instance(size, scale.several)
        ours = runner.seconds(product, instance=instance, way="two-phase")
        found = None if ours is None else _faster_direct(runner, instance, BEYOND * target * ours)
        if found is None:
            continue
        seconds, words = found
        what = (
            f"{size.name}, {scale.several} scenarios: one direct solve ({words}) to two phases ({ours:.3g} s)"
        )
        yield Figure(bench="two-phase", figure=what, value=seconds / ours, unit=TIMES, target=f">= {target}")


def _faster_direct(runner, instance, enough):
    """(seconds, words) of the faster solver; each needs to run no longer than what is known to be enough."""
    best, words = None, []
    for solver in ("highs", "cbc"):
        found = runner.opponent(direct, enough=enough, instance=instance, solver=solver)
        if found is None:
            return None
        words.append(f"{SOLVERS[solver]} {'over ' if found.stopped else ''}{found.seconds:.3g} s")
        best = found.seconds if best is None else min(best, found.seconds)
        enough = min(enough, best)
    return best, ", ".join(words)


def by_dicts(runner):
    """Building the programme from dicts and handing it over whole, against the plain way."""
    scale = runner.scale
    make = partial(Figure, bench="building")
    instance = runner.instance(scale.medium, scale.hundred)
    found = [runner.result(building, instance=instance) for _ in range(scale.repeats)]
    found = [row for row in found if row]
    if not found:
        return
    name = f"{instance.size.name}, {instance.scenarios} scenarios"
    for key, words in (("_rows", "writing the rows and handing over"), ("", "the same, terms worked out")):
        ratio = statistics.median(row[f"plain{key}"] / row[f"product{key}"] for row in found)
        what = f"{name}: {words}, plain PuLP against ours"
        yield make(figure=what, value=ratio, unit=TIMES, target=">= 2")
    each = statistics.median(row["product"] for row in found) / instance.scenarios
    what = f"{name}: building and handing over a scenario, a thousand within a minute"
    yield make(figure=what, value=each, unit="s", target="<= 0.06")


def bound(runner):
    """Our order and bound beside those of the exact pooled form, solved in one piece to a finer gap."""
    scale = runner.scale
    make = partial(Figure, bench="bound", unit=SHARE)
    for size in (scale.small, scale.medium) if scale.long_runs else (scale.small,):
        instance = runner.instance(size, scale.few)
        name = f"{size.name}, {scale.few} scenarios"
        merged = runner.result(solved_size, instance=instance)
        if merged and merged["done"] and merged["cut"]:
            what = f"{name}: what merged uses may hide at the best order, counted in the bound"
            yield make(figure=what, value=merged["hidden"], target="<= 0.001")
        ours = runner.result(product, instance=instance)
        fine = (
            None if ours is None else runner.result(direct, instance=instance, solver="highs", gap=GAP / FINE)
        )
        if ours and fine and None not in (ours["objective"], fine["objective"], fine["bound"]):
            yield from _beside(ours, fine, make, name)


def _beside(ours, fine, make, name):
    """The order and bound of `ours` by those of `fine`, each relative to the best order known."""
    best = max(ours["objective"], fine["objective"])
    size = max(1.0, abs(best))
    for words, value, target in (
        ("our bound over the best order known", ours["bound"] - best, "<= 0.001"),
        ("our bound under the best order known", max(best - ours["bound"], 0.0), "<= 1e-6"),
        ("our order under the exact form's bound", fine["bound"] - ours["objective"], "<= 0.001"),
    ):
        yield make(figure=f"{name}: {words}", value=value / size, target=target)


def next_door(runner):
    """A pack more or fewer of every line, and twelve budgets by shared cuts against twelve cold solves."""
    scale = runner.scale
    size = scale.medium if scale.long_runs else scale.small
    instance = runner.instance(size, scale.hundred if scale.long_runs else scale.few)
    make, name = partial(Figure, bench="next-door"), f"{size.name}, {instance.scenarios} scenarios"
    found = runner.result(pack_by_pack, instance=instance)
    if found and found["done"]:
        what = f"{name}: {found['moves']} moves of a pack, scenarios at hand (built in {found['building']:.2g} s)"
        yield make(figure=what, value=found["seconds"], unit="s", target="<= 1")
    for gap, target in ((0.005, 15), (GAP, 8)) if scale.long_runs else ((0.005, 15),):
        ours = runner.seconds(curve_by_one_master, instance=instance, gap=gap)
        cold = None if ours is None else _cold_curve(runner, instance, gap, BEYOND * target * ours)
        if cold is not None:
            over = "over " if cold.stopped else ""
            spent = f"cold {over}{cold.seconds:.3g} s, shared cuts {ours:.3g} s"
            what = f"{name}: twelve budgets to {100 * gap:.2g} % ({spent})"
            yield make(figure=what, value=cold.seconds / ours, unit=TIMES, target=f">= {target}")


def _cold_curve(runner, instance, gap, enough):
    return runner.opponent(curve_by_cold_solves, enough=enough, instance=instance, gap=gap)


ROWS = {  # the short ones first: what the quick bench has time for
    "building": by_dicts,
    "plain-data": plain_data,
    "against-naive": against_naive,
    "yard-form": yard_form,
    "bound": bound,
    "next-door": next_door,
    "two-phase": two_phase,
    "growth-by-yards": growth_by_yards,
    "order-quality": order_quality,
    "growth-by-scenarios": growth_by_scenarios,
}
