"""An order planned is tried: against a rule of thumb, without its budget, on fresh seasons, against bad years.

Takes what a planning came to and how hard to try; gives the sections of the report. Keeps the time; the trying
itself is planner.trial's.
"""

import os
import sys
import time
from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from typing import Any

import highspy

from planner.season.assumptions import Assumptions
from planner.season.operation import Operation
from planner.sizing.records import Problem
from planner.solution import Plan
from planner.trial import (
    CurveEffort,
    Effort,
    bad_years_curve,
    rivals,
    section_of,
    trial_of,
    without_budget,
)


@dataclass(frozen=True, kw_only=True)
class Tried:
    """One order and its ways to be tried; `solve` and `progress` are the run's own."""

    operation: Operation
    assumptions: Assumptions
    problem: Problem
    plan: Plan
    settings: Any  # runs.Settings
    solve: Callable[..., Plan]
    progress: Callable[..., None]

    def rivals(self):
        """The rule of thumb and nothing on the seasons planned with."""
        self.progress("judging it against other orders")
        return rivals(
            self.operation,
            self.assumptions,
            self.problem,
            self.plan,
            solve=self.solve,
            seconds=self.settings.seconds,
        )

    def without_budget(self):
        self.progress("looking past the budget")
        return without_budget(
            self.problem, solve=self.solve, gap=self.settings.gap, seconds=self.settings.seconds
        )

    def on_fresh_seasons(self, scenarios):
        """The trial's section."""
        hush_greeting()
        settings = self.settings
        usual, gone = usual_packs(self.problem, settings.usual_order)
        effort = Effort(
            count=settings.trial,
            seed=settings.seed,
            gap=settings.gap,
            seconds=settings.trial_seconds,
            left=_clock(settings.trial_seconds),
            tell=self.progress,
            solve=self.solve,
        )
        trial = trial_of(
            self.operation,
            self.assumptions,
            self.problem,
            self.plan.packs(),
            scenarios=scenarios,
            usual=usual,
            effort=effort,
        )
        names = {offer.code: offer.name for offer in self.operation.offers}
        return section_of(
            trial, self.problem.money, not_offered=tuple(names.get(code, code) for code in gone)
        )

    def bad_years_curve(self):
        """The curve's section, or None where the time was too short for it."""
        hush_greeting()
        settings = self.settings
        effort = CurveEffort(
            gap=settings.gap,
            seconds=settings.seconds,
            left=_clock(3 * settings.seconds),
            tell=self.progress,
            solve=self.solve,
        )
        return bad_years_curve(self.problem, self.plan, effort=effort)


def usual_packs(problem, usual):
    """({(offer, period): packs} or None where the keeper told nothing, codes of what can no longer be ordered)."""
    periods = {
        offer.code: min(offer.order_periods)
        for offer in problem.offers
        if offer.when == "now" and offer.order_periods
    }
    told = {code: packs for code, packs in usual.items() if packs}
    if not told:
        return None, ()
    packs = {(code, periods[code]): packs for code, packs in told.items() if code in periods}
    return packs, tuple(sorted(told.keys() - periods.keys()))


def hush_greeting():
    """HiGHS greets on standard output when a process makes its first: not into a keeper's table."""
    sys.stdout.flush()
    kept, nowhere = os.dup(1), os.open(os.devnull, os.O_WRONLY)
    try:
        os.dup2(nowhere, 1)
        highspy.Highs()
    finally:
        os.dup2(kept, 1)
        os.close(kept)
        os.close(nowhere)


def _clock(seconds):
    began = time.monotonic()
    return partial(_left, began, seconds)


def _left(began, seconds):
    return seconds - (time.monotonic() - began)
