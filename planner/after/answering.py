"""The yards' courses answered by shed and bench: when each piece can be loaded, what is short, what then comes home.

Takes the facts of a plan and the courses as most seasons would have them; gives an Answer. Gear that never reached a
yard does not come home from it: courses are taken back until what comes home is there, and what the shed gives agrees.
"""

from collections import defaultdict
from dataclasses import dataclass, replace

from planner.after.bench import Workbench
from planner.after.shed import Chunk, Want
from planner.after.supplying import shed_of, wants_of_shed, wants_of_yards


@dataclass(frozen=True, kw_only=True)
class Ready:
    """Pieces of a chunk: loadable from `week`, at the yard in `arrives`: when wanted, or on the first visit after."""

    chunk: Chunk
    pieces: int
    week: int
    arrives: int

    @property
    def is_late(self):
        return self.arrives > self.chunk.want.week


@dataclass(frozen=True, kw_only=True)
class Answer:
    courses: dict
    bench: Workbench
    ready: tuple[Ready, ...]
    short: tuple[tuple[Want, int], ...]


def answer(facts, courses, *, gear, visits, lands):
    """`gear`: codes of parts that travel; `visits`: yard -> its weeks; `lands`: see supplying.weeks_landing."""
    for_shed = wants_of_shed(facts.problem, facts.plan, gear)
    wants = wants_of_yards(courses) + for_shed
    settled = courses
    while True:
        found = _answered(
            facts, wants, homecomings(settled, facts.assumptions.weeks_to_extract), visits, lands
        )
        now = taken_back(courses, found.ready, settled)
        if now == settled:
            return replace(found, courses=settled)
        settled = now


def _answered(facts, wants, coming, visits, lands):
    shed = shed_of(facts.operation, facts.problem, facts.plan, coming, lands)
    chunks, short = shed.answer(wants)
    bench = Workbench(shed.jobs, facts.assumptions)
    ready = []
    for chunk in chunks:
        rows = [(chunk.ready, chunk.pieces)] if chunk.job is None else bench.ready(chunk.job)
        rows = [(week, pieces) for week, pieces in rows if week < facts.problem.periods]
        for week, pieces in rows:
            arrives = arrival(chunk.want.week, week, visits.get(chunk.want.yard, ()))
            ready.append(Ready(chunk=chunk, pieces=pieces, week=week, arrives=arrives))
        missing = chunk.pieces - sum(pieces for _week, pieces in rows)
        if missing:
            short.append((chunk.want, missing))
    return Answer(courses={}, bench=bench, ready=tuple(ready), short=tuple(short))


def arrival(wanted, ready, visits):
    """In the week it is wanted where it is there by then, else on the first visit after it is."""
    return wanted if ready <= wanted else next((visit for visit in visits if visit >= ready), ready)


def homecomings(courses, extract_weeks):
    """[(part, week from which it is free again, pieces)]: full supers once extracted, the rest a week later."""
    found = []
    for course in courses.values():
        for week, pieces in enumerate(course.home):
            full = course.full[week]
            found.append((course.part, week + max(1, extract_weeks), full))
            found.append((course.part, week + 1, pieces - full))
    return [row for row in found if row[2] > 0]


def taken_back(courses, ready, settled):
    """The courses with no more coming home than planned less what never came; never more than `settled` had."""
    arrived: dict = defaultdict(lambda: defaultdict(int))
    for row in ready:
        arrived[row.chunk.want.yard, row.chunk.want.part][row.arrives] += row.pieces
    return {key: _taken_back(course, arrived[key], settled[key]) for key, course in courses.items()}


def _taken_back(course, arrived, settled):
    missing, home, full = 0, [], []
    for week, planned in enumerate(course.home):
        missing += course.out[week] - arrived.get(week, 0)
        stays = min(planned, max(0, missing))
        back = min(planned - stays, settled.home[week])
        missing -= planned - back
        home.append(back)
        full.append(min(course.full[week], back))
    return replace(course, home=tuple(home), full=tuple(full))
