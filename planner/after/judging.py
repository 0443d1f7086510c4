"""The planned loads held against seasons, and the second trips it is worth keeping a day free for.

Takes what was planned (loads, visits, truck) and seasons with their plan; gives a Check and the trips to keep free, which
are chosen on the seasons planned with alone.
"""

from collections import defaultdict
from dataclasses import dataclass
from functools import cached_property
from typing import Any

import numpy as np

from planner.after.cargo import SYRUP_LB
from planner.after.checking import check
from planner.after.living import live
from planner.after.pool import pool_of
from planner.after.records import EXTRA, KeptFree
from planner.after.rooming import first_full, kept_free, missing_trips
from planner.plan.words import of_100, week_day


@dataclass(frozen=True, kw_only=True)
class Judged:
    """One set of seasons lived through with the plan. `after`: planning.After."""

    after: Any
    problem: Any
    plan: Any

    @cached_property
    def wants(self):
        return self.after.wants(self.problem, self.plan)

    @cached_property
    def lived(self):
        after, weeks = self.after, trips_by_week(self.after)
        return live(
            self.wants,
            after.own,
            pool_of(self.problem, self.plan, after.gear, kind=after.kind),
            after.brought,
            kind=after.kind,
            trips={yard: set(np.flatnonzero(count)) for yard, count in weeks.items()},
            extract_weeks=after.facts.assumptions.weeks_to_extract,
        )

    @cached_property
    def missing(self):
        after = self.after
        return missing_trips(
            self.wants, self.lived.out, after.truck, trips_by_week(after), syrup_by_week(after)
        )

    def check(self, free):
        facts = self.after.facts
        return check(
            self.wants.weights,
            self.lived,
            first_full(self.missing, free, len(self.wants.weights)),
            names=lambda part: facts.parts[part].name,
            yard_names=facts.yard_names,
            day=facts.start,
        )

    def free(self):
        """(yard, week) -> trips to keep free."""
        return kept_free(self.missing, self.wants.weights)

    def free_rows(self, free):
        return tuple(self._free_row(yard, week, trips) for (yard, week), trips in free.items())

    def _free_row(self, yard, week, trips):
        facts, found = self.after.facts, self.missing[yard]
        needed = found.trips[:, week] > 0
        return KeptFree(
            yard=yard,
            yard_name=facts.yard_names[yard],
            what=found.what(int(np.argmax(found.trips[:, week])), week),
            week=week,
            day=week_day(facts.start, week),
            trips=trips,
            in_100=of_100(float(self.wants.weights[needed].sum())),
        )


def trips_by_week(after):
    """yard -> trips by week: the visits due and the extra ones."""
    counts: dict = {}
    for yard in after.yards:
        counts[yard] = np.zeros(after.facts.problem.periods)
        counts[yard][list(after.visits(yard))] = 1
    for yard, trip in after.trips:
        counts[yard][trip.week] += trip.rides == EXTRA
    return counts


def syrup_by_week(after):
    """yard -> lb of syrup by week, as planned."""
    pounds: dict = defaultdict(lambda: np.zeros(after.facts.problem.periods))
    for row in after.feed:
        pounds[row.yard][row.week] += row.gallons * float(SYRUP_LB[f"syrup-{row.ratio}"])
    return dict(pounds)
