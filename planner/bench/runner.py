"""Runs measurements one after another: how often, how long, and what to say where one did not end.

Takes a Scale, the catalogue and the market; gives results of tasks, medians, ratios. Decides no target.
"""

import statistics
from collections.abc import Callable
from dataclasses import dataclass, field

from planner.bench.measuring import Overtime, Stopwatch, apart
from planner.bench.scales import Scale
from planner.bench.tasks import Instance

ROW_SHARE = 1.5  # of an even share of the time left: rows that end early leave the rest to later ones
OWN_SHARE = 0.8  # of a row's time left is a run's own, the rest for working out its seasons
BEYOND = 1.25  # a slow opponent is stopped this far past the target: what it took so far says enough


@dataclass(frozen=True, kw_only=True)
class Opponent:
    """What a slow opponent took: the median of its repeats, at least that where it was `stopped`; its last result."""

    seconds: float
    stopped: bool
    last: dict


@dataclass(frozen=True, kw_only=True)
class Growth:
    """The median ratio over so many seeds, and the medians before and after."""

    ratio: float
    before: float
    after: float
    seeds: int

    def words(self, unit):
        seeds = f"median of {self.seeds} seeds" if self.seeds > 1 else "one seed"
        return f"{seeds}, {self.before:.3g} to {self.after:.3g}{unit}"


@dataclass(kw_only=True)
class Runner:
    scale: Scale
    catalogue: dict
    market: dict
    tell: Callable = print  # what was left out, in a sentence
    run: Callable = apart
    stopwatch: Stopwatch = field(default_factory=Stopwatch)
    row: Stopwatch = field(default_factory=Stopwatch)
    known: dict = field(default_factory=dict)  # results asked for twice

    def instance(self, size, scenarios, seed=1):
        return Instance(
            catalogue=self.catalogue, market=self.market, size=size, scenarios=scenarios, seed=seed
        )

    def begin_row(self, rows_left):
        """Gives the next of so many rows its share of the time there is."""
        left = self.stopwatch.left()
        self.row = Stopwatch(None if left == float("inf") else min(left, ROW_SHARE * left / rows_left))

    def left(self):
        return min(self.row.left(), self.stopwatch.left())

    def result(self, task, *, seconds=None, or_stopped=False, **settings):
        """What the task found. Where it did not end in time None (told), or with `or_stopped` the seconds it had."""
        grace = self.scale.grace(settings.get("instance"))
        limit = min(seconds or self.scale.run_seconds, OWN_SHARE * self.left())
        whole = min(limit + grace, self.left())
        if limit < 1:
            self.tell(f"left out, the time is up: {_what(task, settings)}")
            return None
        if "seconds" in task.__code__.co_varnames[: task.__code__.co_kwonlyargcount]:
            settings["seconds"] = limit
        try:
            found = self.run(task, settings, seconds=whole)
        except Overtime:
            if or_stopped and whole - grace >= 1:
                return {"seconds": whole - grace, "done": False}
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

    def opponent(self, task, *, enough, **settings):
        """What an opponent took that needs not be run longer than `enough` seconds; None where nothing is known."""
        if not self.scale.long_runs and enough > self.scale.run_seconds:
            self.tell(f"left out, it may take {enough:.0f} s: {_what(task, settings)}")
            return None
        limit, spent, found = min(enough, self.scale.opponent_seconds), [], {}
        for _ in range(self.scale.repeats):
            found = self.result(task, seconds=limit, or_stopped=True, **settings)
            if found is None:
                return None
            spent.append((found["seconds"], not found["done"]))
            if spent[0][1]:
                break  # the rest would be stopped alike
        seconds, stopped = statistics.median_low(spent)
        return Opponent(seconds=seconds, stopped=stopped, last=found)

    def growth(self, task, before, after, of):
        """The Growth over the seeds from of(before) to of(after); `before`, `after` make an instance of a seed."""
        pairs = []
        for seed in self.scale.seeds:
            first = self.result(task, instance=before(seed))
            then = self.result(task, instance=after(seed)) if first is not None else None
            if first is None or then is None:
                continue
            if not (first.get("done", True) and then.get("done", True)):
                self.tell(f"left out, not proven in time: {_what(task, {'instance': after(seed)})}")
                continue
            pairs.append((of(first), of(then)))
        if len(pairs) < len(self.scale.seeds):
            self.tell(f"only {len(pairs)} of {len(self.scale.seeds)} seeds ended: {task.__name__}")
        if not pairs:
            return None
        return Growth(
            ratio=statistics.median(last / first for first, last in pairs),
            before=statistics.median(first for first, _ in pairs),
            after=statistics.median(last for _, last in pairs),
            seeds=len(pairs),
        )


def _key(value):
    return (value.size.name, value.scenarios, value.seed) if isinstance(value, Instance) else value


def _what(task, settings):
    instance = settings.get("instance")
    where = (
        f" of {instance.size.name}, {instance.scenarios} scenarios, seed {instance.seed}" if instance else ""
    )
    rest = ", ".join(
        f"{name} {value}" for name, value in settings.items() if name in ("solver", "way", "lean") and value
    )
    return f"{task.__name__.replace('_', ' ')}{where}{', ' if rest else ''}{rest}"
