"""The child that solves: a task on standard input, progress and the plan as JSON lines on standard output.

Takes (parent's process number, Problem, settings) pickled by apart.py. Ends itself, and the solver it runs, when the
parent is gone.
"""

import json
import os
import pickle
import signal
import sys
import threading
import time

from planner.solution.plan_json import as_json
from planner.solution.solving import solve

LOOK_SECONDS = 0.5
TELL_SECONDS = 0.5


def main():
    out = os.fdopen(os.dup(1), "w", encoding="utf-8")
    os.dup2(os.open(os.devnull, os.O_WRONLY), 1)  # solvers greet on standard output
    parent, problem, settings = pickle.load(sys.stdin.buffer)
    threading.Thread(target=_watch, args=(parent,), daemon=True).start()
    plan = solve(problem, **settings, progress=_teller(out))
    _write(out, {"plan": as_json(plan)})


def _watch(parent):
    """Kills this session when the parent is gone."""
    while os.getppid() == parent:
        time.sleep(LOOK_SECONDS)
    os.killpg(os.getpgid(0), signal.SIGKILL)


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
