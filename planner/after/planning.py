"""What follows an order, worked out: needs of the seasons, loads, evenings, feed, pulls, and the check on all seasons.

Takes the facts of a plan, the projections of its seasons and, where there are some, fresh seasons with their plan;
gives the report's AfterSection. Solves nothing.
"""

from collections import Counter, defaultdict
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Any

import numpy as np

from inventory.gear import Kind
from planner.after.answering import answer
from planner.after.cargo import Truck
from planner.after.feeding import bees_cargo, feed_cargo, feed_rows, sugar_needs, sugar_rows
from planner.after.judging import Judged
from planner.after.loads import Lot, joined, trips_of
from planner.after.pool import exists_of, pool_of
from planner.after.records import AfterSection, LateGear, Leg, Load, PullRow
from planner.after.stands import stand_rows
from planner.after.supplying import (
    bought,
    drawn_from,
    in_season,
    stock_at_shed,
    weeks_landing,
)
from planner.after.targets import MOST, courses_of, own_stock
from planner.after.telling import LATE_BENCH, LATE_COMING, NOWHERE, sentences
from planner.after.wants import wants_of
from planner.plan.facts import Facts
from planner.plan.words import week_day
from planner.season.calendar import circuit_of

STAY_HOME = (Kind.FEED, Kind.CONSUMABLE)


def after_of(facts, projections, *, fresh=None):
    """`fresh`: (problem, plan) of seasons nobody planned with, under the same order."""
    return After(facts=facts, projections=tuple(projections)).section(fresh)


@dataclass(frozen=True, kw_only=True)
class After:
    facts: Facts
    projections: tuple[Any, ...]

    @cached_property
    def gear(self):
        return {part.code for part in self.facts.operation.parts if part.kind not in STAY_HOME}

    @cached_property
    def truck(self):
        return Truck(self.facts.operation)

    @cached_property
    def own(self):
        return {key: rows for key, rows in own_stock(self.facts.problem).items() if key[1] in self.gear}

    def wants(self, problem, plan):
        weeks = self.facts.assumptions.weeks_to_extract
        return wants_of(problem, plan, extract_weeks=weeks, hauled=self.gear)

    @cached_property
    def planned(self):
        return self.wants(self.facts.problem, self.facts.plan)

    @cached_property
    def drawn(self):
        return drawn_from(self.facts.problem)

    @cached_property
    def lands(self):
        """(offer, period) -> week in which what is ordered on the order's own day is there."""
        return weeks_landing(self.facts)

    @cached_property
    def answer(self):
        return answer(
            self.facts,
            courses_of(self.planned, self.own, self._exists()),
            lands=self.lands,
            gear=self.gear,
            visits={yard: self.visits(yard) for yard in self.yards},
        )

    @property
    def yards(self):
        """Codes of all yards but the shed."""
        return [yard.code for yard in self.facts.operation.yards if yard.code != self.facts.shed]

    def _exists(self):
        facts = self.facts
        pool = pool_of(facts.problem, facts.plan, self.gear, kind=self.kind)
        there = exists_of(pool, self.planned, self.own, self.kind)
        none = np.zeros(facts.problem.periods, dtype=int)
        return {part: there.get(self.kind(part), none) for part in self.gear}

    @property
    def courses(self):
        return self.answer.courses

    def visits(self, yard):
        facts = self.facts
        step = circuit_of(facts.operation.yards_by_code[yard], facts.assumptions).step
        return range(0, facts.problem.periods, step)

    @cached_property
    def feed(self):
        return feed_rows(self.facts.operation, self.facts.assumptions, self.projections)

    @cached_property
    def trips(self):
        """[(yard, Trip)] in order of weeks."""
        found = []
        for yard, (lots, full, spare) in self._asked.items():
            trips, _left = trips_of(
                self.truck,
                self.visits(yard),
                [replace(lot, cargo=self._fitting(lot.cargo)) for lot in lots],
                full={week: self._fitting(cargo) for week, cargo in full.items()},
                spare={week: self._fitting(cargo) for week, cargo in spare.items()},
            )
            found += [(yard, trip) for trip in trips]
        return sorted(found, key=lambda row: row[1].week)

    @cached_property
    def _asked(self):
        """yard -> (lots, what must come home by week, what may)."""
        lots = self._lots()
        feed = feed_cargo(self.feed)
        bees = bees_cargo(self.facts.operation, self.facts.assumptions, self.projections)
        found = {}
        for yard in self.yards:
            fed = (*feed.get(yard, ()), *bees.get(yard, ()))
            brought = [Lot(cargo=dict(cargo), release=week, due=week) for week, cargo in fed]
            found[yard] = ([*lots.get(yard, ()), *brought], *self._homeward(yard))
        return found

    def _fitting(self, cargo):
        return {key: pieces for key, pieces in cargo.items() if key not in self.too_large}

    @cached_property
    def too_large(self):
        """What the empty truck takes not even one of."""
        keys = set()
        for lots, full, spare in self._asked.values():
            for cargo in (*(lot.cargo for lot in lots), *full.values(), *spare.values()):
                keys.update(cargo)
        return {key for key in keys if not self.truck.takes({key: 1})}

    def _lots(self):
        """yard -> lots of what is ready, alike in their weeks."""
        cargo: dict = defaultdict(lambda: defaultdict(int))
        for row in self._ready():
            cargo[row.chunk.want.yard, row.week, row.arrives][row.chunk.part, False] += row.pieces
        lots: dict = defaultdict(list)
        for (yard, release, due), pieces in sorted(cargo.items()):
            lots[yard].append(Lot(cargo=dict(pieces), release=release, due=due))
        return lots

    def _ready(self):
        """What is ready for the yards."""
        return [row for row in self.answer.ready if row.chunk.want.yard != self.facts.shed]

    @property
    def late(self):
        """What is ready for the yards later than it is wanted there."""
        return [row for row in self._ready() if row.is_late]

    def _homeward(self, yard):
        full: dict = defaultdict(dict)
        spare: dict = defaultdict(dict)
        for (at, part), course in self.courses.items():
            if at != yard:
                continue
            for week, pieces in enumerate(course.home):
                pulled = course.full[week]
                if pulled:
                    key = part, part.startswith("box-")
                    full[week] = joined(full[week], {key: pulled})
                if pieces - pulled:
                    spare[week] = joined(spare[week], {(part, False): pieces - pulled})
        return full, spare

    def kind(self, part):
        """Frames that bees draw into combs of a depth count as those combs."""
        return self.drawn.get(part, part)

    @cached_property
    def brought(self):
        """(yard, kind) -> net pieces there by each week, as the trips bring and take them."""
        net: dict = defaultdict(lambda: np.zeros(self.facts.problem.periods))
        for yard, trip in self.trips:
            for sign, cargo in ((1, trip.out), (-1, trip.home)):
                for (part, _full), pieces in cargo.items():
                    net[yard, self.kind(part)][trip.week :] += sign * pieces
        return dict(net)

    def judged(self, problem, plan):
        return Judged(after=self, problem=problem, plan=plan)

    def section(self, fresh):
        facts = self.facts
        names = {recipe.code: recipe.name for recipe in facts.operation.recipes}
        sugar = [
            (week, lb)
            for part, week, lb in (
                *stock_at_shed(facts.problem),
                *bought(facts.problem, facts.plan, self.lands),
            )
            if part == "sugar"
        ]
        judged = self.judged(facts.problem, facts.plan)
        free = judged.free()
        told = AfterSection(
            level_in_100=round(100 * MOST),
            truck_lb=facts.operation.truck_lb,
            truck_cubic_ft=facts.operation.truck_cubic_ft,
            sentences=(),
            planned=judged.check(free),
            bench=self.answer.bench.told(names, facts.start),
            fresh=None if fresh is None else self.judged(*fresh).check(free),
            in_season=sum(n for part, _week, n in in_season(facts.problem, facts.plan) if part in self.gear),
            loads=self._loads(),
            late=self._late(),
            feed=self.feed,
            sugar=sugar_rows(sugar_needs(self.projections), facts.start, sugar),
            pulls=self._pulls(),
            stands=stand_rows(facts.operation, self.projections),
            free=judged.free_rows(free),
            too_large=tuple(sorted({self.truck.full_name(key) for key in self.too_large})),
        )
        return sentences(told)

    def _loads(self):
        facts = self.facts
        return tuple(
            Load(
                number=number,
                week=trip.week,
                day=week_day(facts.start, trip.week),
                yard=yard,
                yard_name=facts.yard_names[yard],
                rides=trip.rides,
                out=self._leg(trip.out),
                home=self._leg(trip.home),
            )
            for number, (yard, trip) in enumerate(self.trips, 1)
        )

    def _leg(self, cargo):
        return self.truck.leg(cargo) if cargo else Leg(carried=(), lb=0, cubic_ft=0.0)

    def _late(self):
        rows: Counter = Counter()
        for late in self.late:
            want, why = late.chunk.want, LATE_COMING if late.chunk.job is None else LATE_BENCH
            rows[want.yard, want.part, want.week, late.arrives, why] += late.pieces
        for want, pieces in self.answer.short:
            rows[want.yard, want.part, want.week, -1, NOWHERE] += pieces
        facts = self.facts
        return tuple(
            LateGear(
                yard=yard,
                yard_name=facts.yard_names.get(yard, yard),
                part=part,
                name=facts.parts[part].name,
                pieces=pieces,
                wanted_on=week_day(facts.start, wanted),
                comes_on=None if week < 0 else week_day(facts.start, week),
                why=why,
            )
            for (yard, part, wanted, week, why), pieces in sorted(
                rows.items(), key=lambda item: (item[0][2], item[0][0], item[0][1], item[0][3])
            )
        )

    def _pulls(self):
        facts, answers = self.facts, self.facts.assumptions
        tally: Counter = Counter()
        mean: dict = defaultdict(float)
        for (yard, part), course in self.courses.items():
            if not part.startswith("box-"):
                continue
            means = self.planned.weights @ self.planned.at("pulled", (yard, part))
            for week, pieces in enumerate(course.full):
                tally[week, yard] += pieces
                mean[week, yard] += float(means[week])
        return tuple(
            PullRow(
                week=week,
                day=week_day(facts.start, week),
                yard=yard,
                yard_name=facts.yard_names[yard],
                supers=supers,
                mean=round(mean[week, yard], 1),
                hours=round(supers * answers.super_minutes / 60, 1),
                extracted_by=week_day(facts.start, week + max(1, answers.weeks_to_extract)),
            )
            for (week, yard), supers in sorted(tally.items())
            if supers
        )
