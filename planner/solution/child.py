"""The child that solves: a task on standard input, progress and the answer as JSON lines on standard output.

Takes (parent's process number, "solve" or "study", arguments, settings) pickled by apart.py. Ends itself, and the
solver it runs, when the parent is gone.
"""

import json
import os
import pickle
import sys
import time
from collections.abc import Callable

from planner.solution import plan_json
from planner.solution.nearby import nearby_json
from planner.solution.nearby.studying import study
from planner.solution.processes import end_with, own_output
from planner.solution.solving import solve
from planner.solution.threads import keep_to_one_thread

TASKS: dict[str, tuple[Callable, Callable]] = {
    "solve": (solve, plan_json.as_json),
    "study": (study, nearby_json.as_json),
}
TELL_SECONDS = 0.5


def main():
    out = os.fdopen(own_output(), "w", encoding="utf-8")
    parent, what, arguments, settings = pickle.load(sys.stdin.buffer)
    end_with(parent)
    if what == "study":
        keep_to_one_thread()  # a second process works beside it
    act, told = TASKS[what]
    _write(out, {"answer": told(act(*arguments, **settings, progress=_teller(out)))})


def _teller(out):
    last: dict = {"stage": None, "at": 0.0}

    def tell(stage, bound, gap):
        now = time.monotonic()
        if stage != last["stage"] or now - last["at"] >= TELL_SECONDS:
            last.update(stage=stage, at=now)
            _write(out, {"stage": stage, "bound": bound, "gap": gap})

    return tell


def _write(out, message):
    out.write(json.dumps(message) + "\n")
    out.flush()


if __name__ == "__main__":
    main()
