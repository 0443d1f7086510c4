"""What the second process of a curve does: builds the scenarios, waits for its budgets, answers, ends.

Takes the parent's process number and an open file with a pickled Problem as arguments, then on standard input pickled
(budgets, closely, settings); writes what the sweep found, pickled, on standard output. Ends when the parent is gone.
"""

import os
import pickle
import sys
from dataclasses import replace

from planner.solution.clock import Clock
from planner.solution.nearby.sweep import Sweep
from planner.solution.processes import end_with, own_output
from planner.solution.threads import keep_to_one_thread
from planner.solution.warm import WarmScenarios


def main():
    out = os.fdopen(own_output(), "wb")
    parent, file = (int(text) for text in sys.argv[1:])
    end_with(parent, session=False)
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


if __name__ == "__main__":
    main()
