"""Runs measurements one after another within the time there is, and says what did not end.

Takes tasks with their settings; gives what they found, or None. Decides no target and knows no task.
"""

from collections.abc import Callable
from dataclasses import dataclass, field

from apiary.bench.measuring import Overtime, Stopwatch, apart

ROW_SHARE = 1.5  # of an even share of the time left: rows that end early leave the rest to later ones
OWN_SHARE = 0.8  # of a row's time left is a run's own, the rest for what comes before and after it
UNTOLD = ("seconds", "folder")


@dataclass(kw_only=True)
class Timekeeper:
    """`run_seconds` ends one run, `start_seconds` are beside them; without `long_runs` nothing over a minute."""

    tell: Callable = print  # what was left out, in a sentence
    run: Callable = apart
    stopwatch: Stopwatch = field(default_factory=Stopwatch)
    row: Stopwatch = field(default_factory=Stopwatch)
    run_seconds: float = 300.0
    start_seconds: float = 15.0
    long_runs: bool = True

    def begin_row(self, rows_left):
        """Gives the next of so many rows its share of the time there is."""
        left = self.stopwatch.left()
        self.row = Stopwatch(None if left == float("inf") else min(left, ROW_SHARE * left / rows_left))

    def left(self):
        return min(self.row.left(), self.stopwatch.left())

    def grace(self, settings):
        """Seconds beside a run's own before it is killed."""
        return self.start_seconds

    def what(self, task, settings):
        """A run in words."""
        rest = ", ".join(
            f"{name} {value}" for name, value in settings.items() if name not in UNTOLD and value
        )
        return f"{task.__name__.replace('_', ' ')}{', ' if rest else ''}{rest}"

    def result(self, task, *, seconds=None, or_stopped=False, **settings):
        """What the task found. Where it did not end in time None (told), or with `or_stopped` the seconds it had."""
        grace = self.grace(settings)
        limit = min(seconds or self.run_seconds, OWN_SHARE * self.left())
        whole = min(limit + grace, self.left())
        if limit < 1:
            self.tell(f"left out, the time is up: {self.what(task, settings)}")
            return None
        if "seconds" in task.__code__.co_varnames[: task.__code__.co_kwonlyargcount]:
            settings["seconds"] = limit
        try:
            found = self.run(task, settings, seconds=whole)
        except Overtime:
            if or_stopped and whole - grace >= 1:
                return {"seconds": whole - grace, "done": False}
            self.tell(f"left out, it did not end within {limit:.0f} s: {self.what(task, settings)}")
            return None
        if found is None:
            self.tell(f"left out, its process died: {self.what(task, settings)}")
        return found
