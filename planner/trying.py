"""An order planned is tried: against a rule of thumb, without its budget, on fresh seasons, against bad years.

Takes what a planning came to and how hard to try; gives the sections of the report. Keeps the time; the trying
itself is planner.trial's.
"""

import os
import sys
import time
from collections.abc import Callable
from dataclasses import dataclass, replace
from decimal import Decimal
from functools import partial
from typing import Any

import highspy

from planner.checking.check import check
from planner.season.assumptions import Assumptions
from planner.season.operation import Operation
from planner.sizing.records import Problem
from planner.solution import Plan
from planner.solution.nearby import study_apart
from planner.trial import (
    CurveEffort,
    Effort,
    bad_years_curve,
    rivals,
    section_of,
    trial_of,
    without_budget,
)
from planner.trial.contest import FAR
from planner.yardform import NotJudged, judge, not_told
from planner.yardform import section_of as yard_section_of

JUDGED_BY_YARD = 60  # fresh seasons told yard by yard at most
NEXT_DOOR = {"one pack more or fewer": "asking what one pack more would do"}
OTHER_BUDGETS = "asking what other budgets would do"
YARD_SHARE = 0.15  # of the trial's time, kept for that


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

    def next_door(self, cancelled):
        """A pack more or fewer of every line, and other budgets: what time allows of it."""
        return study_apart(
            self.problem,
            self.plan,
            gap=self.settings.gap,
            seconds=self.settings.nearby_seconds,
            progress=lambda stage, _bound, _gap: self.progress(NEXT_DOOR.get(stage, OTHER_BUDGETS)),
            cancelled=cancelled,
        )

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
        """The trial's section, the yard form's judgement in it."""
        hush_greeting()
        left = _clock(self.settings.trial_seconds)
        section = self._against_others(scenarios, left)
        return replace(section, by_yard=self.by_yard(left))

    def _against_others(self, scenarios, left):
        settings = self.settings
        seconds = (1 - YARD_SHARE) * settings.trial_seconds
        usual, gone = usual_packs(self.problem, settings.usual_order)
        effort = Effort(
            count=settings.trial,
            seed=settings.seed,
            gap=settings.gap,
            seconds=seconds,
            left=lambda: left() - settings.trial_seconds + seconds,
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

    def by_yard(self, left):
        """What the yard form makes of the order on fresh seasons, in the seconds `left()`; says so where it could not."""
        budget = self.problem.budget
        try:
            judged = judge(
                self.operation,
                self.assumptions,
                self.plan.packs(),
                budget=None if budget is None else Decimal(repr(budget)),
                count=JUDGED_BY_YARD,
                seed=self.settings.seed + FAR,
                enough=lambda _seasons: left() <= 0,
                breathe=partial(self.progress, "telling the hauling yard by yard"),
            )
        except NotJudged as why:
            return not_told(why)
        return yard_section_of(judged, self.problem.money)

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

    def beliefs(self, cancelled):
        """The section of the beliefs checked, on the seasons planned with."""
        return check(
            self.operation,
            self.assumptions,
            self.problem,
            self.plan,
            seed=self.settings.seed,
            gap=self.settings.gap,
            seconds=self.settings.beliefs_seconds,
            progress=self.progress,
            cancelled=cancelled,
        )


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
