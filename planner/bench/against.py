"""Rows against the naive form: how much smaller and faster ours is, how near the yard form comes to it.

Takes a Runner; gives Figures as they are found. A naive run is stopped once it has taken enough to say what is asked.
"""

from functools import partial

from apiary.bench.figures import Figure
from planner.bench.runner import BEYOND
from planner.bench.sizes import naive_sizes, pooled_size, solved_size
from planner.bench.tasks import linear_forms, naive, pooled_order_in_naive, product

TIMES, SHARE = "times", "share"
FORMS = {
    False: "the naive form, every part at every place",
    True: "the lean naive form, a part only where anything touches it",
}
SOLVERS = {"highs": "HiGHS", "cbc": "CBC"}


def against_naive(runner):
    """The small and the medium operation against one balance a part, place, period and scenario."""
    scale = runner.scale
    yield from _fewer_variables(runner, scale.small)
    cases = ((scale.small, "highs", 40), (scale.small, "cbc", 60), (scale.medium, "highs", 200))
    for size, solver, target in cases:
        instance = runner.instance(size, scale.few)
        ours = runner.seconds(product, instance=instance)
        if ours is not None:
            yield from _times(runner, instance, solver, ours=ours, target=target)


def _fewer_variables(runner, size):
    """Against what is really solved, its uses merged to the gap asked for; the exact pooled form beside it."""
    instance = runner.instance(size, runner.scale.few)
    solved, pooled, form = (
        runner.result(task, instance=instance) for task in (solved_size, pooled_size, naive_sizes)
    )
    if not pooled or not form or not solved:
        return
    if not solved["done"]:
        runner.tell(f"left out, not proven in time: size of what is solved of {_name(instance)}")
        return
    ours, exact = (f"{row['variables']:,} × {row['rows']:,}" for row in (solved, pooled))
    for lean, key, rows in ((False, "variables", "rows"), (True, "lean", "lean_rows")):
        theirs = f"{form[key]:,} × {form[rows]:,}"
        sizes = (
            f"{theirs} to {ours}; {form[key] / pooled['variables']:.4g} times the exact pooled form's {exact}"
        )
        yield Figure(
            bench="against-naive",
            figure=f"{_name(instance)}: fewer variables than {FORMS[lean]} ({sizes})",
            value=form[key] / solved["variables"],
            unit=TIMES,
            target=">= 100",
        )


def _times(runner, instance, solver, *, ours, target):
    """The lean form first: less than half as large, it is the harder to beat; the whole one where it did not do."""
    for lean in (True, False):
        found = runner.opponent(
            naive, enough=BEYOND * target * ours, instance=instance, solver=solver, lean=lean
        )
        if found is None:
            return
        yield Figure(
            bench="against-naive",
            figure=f"{_name(instance)}: {FORMS[lean]}, by {SOLVERS[solver]} ({_spent(found)}) to ours ({ours:.3g} s)",
            value=found.seconds / ours,
            unit=TIMES,
            target=f">= {target}",
        )
        if found.stopped or found.seconds >= target * ours:
            return


def _spent(found):
    """What an opponent took, building and solving apart."""
    last = found.last
    if "solving" not in last:
        return f"at least: killed after {found.seconds:.3g} s"
    parts = f"{last['building']:.3g} s building, {last['solving']:.3g} s handing over and solving"
    return f"at least: stopped after {parts}" if found.stopped else f"{found.seconds:.3g} s: {parts}"


def yard_form(runner):
    """The yard form beside the naive one, and the pooled order held in the naive form."""
    make = partial(Figure, bench="yard-form", unit=SHARE)
    instance = runner.instance(runner.scale.small, runner.scale.of_forms)
    found = runner.result(linear_forms, instance=instance)
    if found and None not in found.values():
        for key, target, words in (
            ("", "<= 0.0015", "LP of the yard form against the naive LP"),
            ("free_", "<= 1e-6", "the same where hauling is free"),
        ):
            gap = abs(found[f"{key}naive"] - found[f"{key}yard"]) / max(1.0, abs(found[f"{key}naive"]))
            yield make(figure=f"{_name(instance)}: {words}", value=gap, target=target)
    elif found:
        runner.tell(f"left out, not solved in time: linear forms of {_name(instance)}")
    yield from _held(runner, make)


def _held(runner, make):
    """What the pooled order loses in the naive form: at most, as the naive form's bound may be out of reach."""
    instance = runner.instance(runner.scale.small, runner.scale.of_orders)
    found = runner.result(pooled_order_in_naive, instance=instance)
    if found is None:
        return
    held, best, limit = found["held"], found["best"], found["bound"]
    if held is None or limit is None:
        runner.tell(f"left out, not solved in time: pooled order in the naive form of {_name(instance)}")
        return
    size = max(1.0, abs(limit))
    known = held if best is None else max(held, best)
    words = (
        f"pooled order held in the naive form loses at most ({(limit - known) / size:.2%} of it not proven)"
    )
    yield make(figure=f"{_name(instance)}: {words}", value=max((limit - held) / size, 0.0), target="<= 0.005")


def _name(instance):
    many = "s" if instance.scenarios != 1 else ""
    return f"{instance.size.name}, {instance.scenarios} scenario{many}"
