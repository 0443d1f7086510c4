"""A curve's budgets in two halves: the smaller ones by one sweep here, the larger ones by another, at the same time in
a process of its own where the machine has two cores.

Takes a Problem that suits cuts and its warm scenarios; gives the best order and bound under each budget. Which budget
belongs to which half does not depend on the machine.
"""

import math
import os

from planner.solution.nearby.sweep import Sweep
from planner.solution.two_phase import suits

TWO_FROM = 30  # scenarios: with fewer a second process takes longer to start than it saves
SMALLER = 7 / 12  # of the budgets: the other half starts later, and takes long over its first


def pays(problem):
    """Whether a second process is worth its start."""
    return suits(problem) and len(problem.scenarios) >= TWO_FROM and _cores() > 1


def _cores():
    """Cores this process may use, where the system tells; else those of the machine."""
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


class Halves:
    """`companion`: where the larger budgets are taken; None: here, after the smaller ones."""

    def __init__(self, problem, warm, *, gap, clock, tell, packs=None, companion=None):
        self.problem, self.warm, self.packs, self.companion = problem, warm, packs, companion
        self.settings = {"gap": gap, "clock": clock, "tell": tell}
        self.clock, self.tell, self.gap = clock, tell, gap
        self.sweep = self._sweep()

    def _sweep(self):
        sweep = Sweep(self.problem, self.warm, **self.settings)
        if self.packs is not None:
            sweep.know(self.packs)
        return sweep

    def least(self):
        return self.sweep.least()

    def most(self):
        return self.sweep.most()

    def points(self, budgets, closely):
        """({budget: Best}, {budget: objective in fractions}) of rising budgets, some missing where time ran out."""
        two = len(self.problem.scenarios) >= TWO_FROM
        count = math.ceil(SMALLER * len(budgets)) if two else len(budgets)
        smaller, larger = budgets[:count], budgets[count:]
        asked = self.companion is not None and bool(larger) and not self.clock.is_over()
        if asked:
            self.companion.ask(larger, closely, gap=self.gap, seconds=self.clock.left(), packs=self.packs)
        found, fractions = self.sweep.points(smaller, closely, after=0 if asked else len(larger))
        rest = self.companion.answer(self.clock.left(), self.tell) if asked else None
        if rest is None:
            rest = self._sweep().points(larger, closely) if larger else ({}, {})
        return {**found, **rest[0]}, {**fractions, **rest[1]}
