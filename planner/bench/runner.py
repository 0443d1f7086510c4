"""Runs the planner's measurements: on which instances, how often, and what to say where one was not proven.

Takes a Scale, the catalogue and the market; gives results of tasks, medians, ratios. Decides no target.
"""

import statistics
from dataclasses import dataclass, field

from apiary.bench.timekeeping import Timekeeper
from planner.bench.scales import Scale
from planner.bench.tasks import Instance

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
class Runner(Timekeeper):
    scale: Scale
    catalogue: dict
    market: dict
    known: dict = field(default_factory=dict)  # results asked for twice

    def __post_init__(self):
        self.run_seconds, self.long_runs = self.scale.run_seconds, self.scale.long_runs

    def instance(self, size, scenarios, seed=1):
        return Instance(
            catalogue=self.catalogue, market=self.market, size=size, scenarios=scenarios, seed=seed
        )

    def grace(self, settings):
        return self.scale.grace(settings.get("instance"))

    def what(self, task, settings):
        return _what(task, settings) if "instance" in settings else super().what(task, settings)

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
