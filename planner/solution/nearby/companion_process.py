"""What the second process of a curve does: builds the scenarios, waits for its budgets, answers, ends.

Takes the parent's process number and an open file with a pickled Problem as arguments, then on standard input pickled
(budgets, closely, settings); writes what the sweep found, pickled, on standard output. Ends when the parent is gone.
"""

import os
import pickle
import signal
import sys
import threading
import time
from dataclasses import replace

from planner.solution.clock import Clock
from planner.solution.nearby.sweep import Sweep
from planner.solution.threads import keep_to_one_thread
from planner.solution.warm import WarmScenarios

LOOK_SECONDS = 0.5


def main():
    out = os.fdopen(os.dup(1), "wb")
    os.dup2(os.open(os.devnull, os.O_WRONLY), 1)  # solvers greet on standard output
    parent, file = (int(text) for text in sys.argv[1:])
    threading.Thread(target=_watch, args=(parent,), daemon=True).start()
    keep_to_one_thread()
    with os.fdopen(file, "rb") as given:
        problem = pickle.load(given)
    warm = WarmScenarios(replace(problem, budget=None))
    budgets, closely, settings = pickle.load(sys.stdin.buffer)
    pickle.dump(found(problem, warm, budgets, closely, **settings), out)
    out.flush()


def found(problem, warm, budgets, closely, *, gap, seconds, packs):
    """What a sweep of its own finds under these budgets."""
    sweep = Sweep(problem, warm, gap=gap, clock=Clock(seconds), tell=lambda *told: None)
    if packs is not None:
        sweep.know(packs)
    return sweep.points(budgets, closely)


def _watch(parent):
    """Kills this process when the parent is gone."""
    while os.getppid() == parent:
        time.sleep(LOOK_SECONDS)
    os.kill(os.getpid(), signal.SIGKILL)


if __name__ == "__main__":
    main()
