"""What an order loses against the best one of a problem, found quickly: the search starts from that order.

Takes a Problem, the order {(offer, period): packs}, a gap and seconds; gives a Regret. The order made for the problem
is a true one, its worth exact; how much better another might be is bounded by the best in fractions. Never below zero:
where nothing better is found the order stands.
"""

from dataclasses import dataclass
from typing import Any

import numpy as np

from planner.programme.here_and_now import order_part
from planner.solution.clock import Clock
from planner.solution.recourse import NoRecourse, worths
from planner.solution.solving import MANY_SCENARIOS, solve
from planner.solution.two_phase.earnings import Earnings
from planner.solution.two_phase.master import Master
from planner.solution.two_phase.planning import GROUPS, suits
from planner.solution.two_phase.search import HIDDEN, CannotCut, NoOrder, Search
from planner.solution.valuing import objective_of, ordered
from planner.solution.warm import WarmScenarios


class NotJudged(Exception):
    """The order leaves undone what must be done there, or time ran out before a first judgement."""


@dataclass(frozen=True, kw_only=True)
class Regret:
    """`held`: worth of the order as it stands; `best`: of the best one found, `packs`; `bound`: none is worth more."""

    held: float
    best: float
    bound: float
    packs: dict

    @property
    def lost(self):
        return max(self.best - self.held, 0.0)


def regret_of(problem, packs, *, gap=0.001, seconds=30.0):
    """The Regret of holding `packs`; a gain within the gap is none."""
    clock = Clock(seconds)
    packs = {key: count for key, count in packs.items() if count > 0}
    found = None
    if suits(problem) and len(problem.scenarios) >= MANY_SCENARIOS:
        try:
            found = _by_cuts(problem, packs, gap, clock)
        except (CannotCut, NoOrder, NoRecourse):
            found = None
    if found is None:
        found = _directly(problem, packs, gap, clock)
    if found.lost <= gap * max(1.0, abs(found.held)):
        return Regret(held=found.held, best=found.held, bound=max(found.bound, found.held), packs=packs)
    return found


def _directly(problem, packs, gap, clock):
    try:
        held = objective_of(problem, worths(problem, packs))
    except NoRecourse as why:
        raise NotJudged(str(why)) from why
    plan = solve(problem, gap=gap, seconds=clock.left(), prices=False)
    if not plan.is_order:
        raise NotJudged(plan.reason)
    best = max(plan.objective, held)
    return Regret(
        held=held,
        best=best,
        bound=max(plan.bound, best),
        packs=packs if held >= plan.objective else plan.packs(),
    )


def _by_cuts(problem, packs, gap, clock):
    """None where the order's columns cannot be had (it is more than any best order of this problem would buy)."""
    warm = WarmScenarios(problem, merge=True)
    part = order_part(problem)
    earnings = Earnings(problem, warm, list(part.packs), GROUPS)
    master = From(part, earnings.groups)
    master.start = master.columns_of(packs)
    if master.start is None:
        return None
    search = FromOrder(master, earnings, gap=gap, clock=clock, tell=_untold)
    search.hidden = 0.0  # the order as it stands is judged exactly, whatever is not known yet
    held = search.worth(master.start)
    search.hidden = HIDDEN
    if held == -np.inf:
        raise NotJudged("under the order as it stands a season leaves undone what must be done")
    search.run()
    return Regret(
        held=held,
        best=float(search.best),
        bound=float(min(max(search.upper, search.best), np.finfo(float).max)),
        packs={key: round(count, 6) for key, count in search.best_packs().items() if count > 1e-9},
    )


def _untold(stage, bound, gap):
    """Progress told to nobody."""


class From(Master):
    """A master whose first point is an order given."""

    start: Any = None

    def nothing(self):
        return self.start


class FromOrder(Search):
    """The quick part of the search: the best in fractions, then whole orders near it and near the best yet. The proof
    among all whole orders is left out."""

    def run(self):
        self.look_in_fractions()
        if not self.master.whole.any():
            return
        for about, full in ((self.looked, False), (None, False), (None, True)):
            if self.is_done():
                return
            near = self.best_columns if about is None else about
            found = self._whole_near(near, 0.3 * self.gap, full=full)
            if found.columns is not None:
                self.worth(found.columns)


def spend_of(problem, packs):
    """Packs and fees of an order, as the problem prices them."""
    return ordered(problem, packs).spend
