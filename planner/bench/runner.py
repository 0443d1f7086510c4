"""Runs measurements one after another: how large, how often, how long, and what to say where one did not end.

Takes a Scale, the catalogue and the market; gives results of tasks, medians of ratios. Decides no target.
"""

import statistics
from collections.abc import Callable
from dataclasses import dataclass, field

from planner.bench.instances import Size
from planner.bench.measuring import Overtime, Stopwatch, apart
from planner.bench.tasks import Instance

SMALL, MEDIUM, LARGE = Size(yards=6, colonies=90), Size(yards=12, colonies=300), Size(yards=40, colonies=1000)
WIDE = Size(yards=40, colonies=600)  # the small one's colonies a yard


@dataclass(frozen=True, kw_only=True)
class Scale:
    """How much is measured. `run_seconds` ends one run, `total_seconds` all of them (None: no end)."""

    small: Size = SMALL
    medium: Size = MEDIUM
    large: Size = LARGE
    wide: Size = WIDE
    few: int = 20
    hundred: int = 100
    several: int = 300
    many: int = 1000
    fresh: int = 1000
    of_forms: int = 20  # scenarios in which forms are compared as LPs
    of_orders: int = 5  # scenarios in which the pooled order is held in the naive form
    repeats: int = 3
    seeds: tuple[int, ...] = (1, 2, 3, 4, 5)
    trial_seeds: tuple[int, ...] = (1, 2, 3)
    run_seconds: float = 900.0
    naive_seconds: float = 1800.0
    grace_seconds: float = 240.0  # beside a run's own: working out the seasons, starting, ending
    total_seconds: float | None = None
    long_runs: bool = True


FULL = Scale()
QUICK = Scale(
    of_forms=3,
    of_orders=1,
    repeats=1,
    seeds=(1, 2, 3),
    trial_seeds=(1,),
    fresh=200,
    run_seconds=50.0,
    naive_seconds=50.0,
    grace_seconds=20.0,
    total_seconds=255.0,
    long_runs=False,
)


@dataclass(kw_only=True)
class Runner:
    scale: Scale
    catalogue: dict
    market: dict
    tell: Callable = print  # what was left out, in a sentence
    run: Callable = apart
    stopwatch: Stopwatch = field(default_factory=Stopwatch)
    known: dict = field(default_factory=dict)  # results asked for twice

    def instance(self, size, scenarios, seed=1):
        return Instance(
            catalogue=self.catalogue, market=self.market, size=size, scenarios=scenarios, seed=seed
        )

    def result(self, task, *, seconds=None, or_stopped=False, **settings):
        """What the task found. Where it did not end in time None (told), or with `or_stopped` the seconds it had."""
        limit = min(seconds or self.scale.run_seconds, self.stopwatch.left())
        if limit < 1:
            self.tell(f"left out, the time is up: {_what(task, settings)}")
            return None
        if "seconds" in task.__code__.co_varnames[: task.__code__.co_kwonlyargcount]:
            settings["seconds"] = limit
        try:
            found = self.run(task, settings, seconds=limit + self.scale.grace_seconds)
        except Overtime:
            if or_stopped:
                return {"seconds": limit, "done": False}
            self.tell(f"left out, it did not end within {limit:.0f} s: {_what(task, settings)}")
            return None
        if found is None:
            self.tell(f"left out, its process died: {_what(task, settings)}")
        return found

    def seconds(self, task, **settings):
        """Median seconds of the repeats of a task that must end `done`; None where one did not."""
        key = (task.__name__, *sorted((name, _key(value)) for name, value in settings.items()))
        if key not in self.known:
            self.known[key] = self._median(task, settings)
        return self.known[key]

    def _median(self, task, settings):
        spent = []
        for _ in range(self.scale.repeats):
            found = self.result(task, **settings)
            if found is None:
                return None
            if not found["done"]:
                self.tell(f"left out, not proven in {found['seconds']:.0f} s: {_what(task, settings)}")
                return None
            spent.append(found["seconds"])
        return statistics.median(spent)

    def growth(self, task, before, after, of):
        """Median over the seeds of of(after) ÷ of(before); `before`, `after` make an instance of a seed."""
        ratios = []
        for seed in self.scale.seeds:
            first, then = (self.result(task, instance=make(seed)) for make in (before, after))
            if first is None or then is None or not (first.get("done", True) and then.get("done", True)):
                continue
            ratios.append(of(then) / of(first))
        if len(ratios) < len(self.scale.seeds):
            self.tell(f"only {len(ratios)} of {len(self.scale.seeds)} seeds ended: {task.__name__}")
        return statistics.median(ratios) if ratios else None


def _key(value):
    return (value.size.name, value.scenarios, value.seed) if isinstance(value, Instance) else value


def _what(task, settings):
    instance = settings.get("instance")
    where = (
        f" of {instance.size.name}, {instance.scenarios} scenarios, seed {instance.seed}" if instance else ""
    )
    rest = ", ".join(f"{name} {value}" for name, value in settings.items() if name in ("solver", "way"))
    return f"{task.__name__.replace('_', ' ')}{where}{', ' if rest else ''}{rest}"
