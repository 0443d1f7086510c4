"""Work put on evenings by earliest due date: the order that keeps the greatest lateness least (Jackson 1955), also
where jobs may be broken off and their gear comes later (Horn 1974).

Takes jobs with minutes, the week their gear is there and the week by whose end they are due, and the minutes of each
evening; gives what is done on which evening, and the latest start that is still in time. Knows no gear.
"""

from collections import defaultdict
from dataclasses import dataclass

TINY = 1e-6


@dataclass(frozen=True, kw_only=True)
class Job:
    """`units` pieces of `minutes` each; `due`: by the end of that week; -1 and less is late whatever is done."""

    code: str
    units: int
    minutes: float
    release: int
    due: int
    order: int  # of jobs due alike the lower goes first: what goes into another piece

    @property
    def work(self):
        return self.units * self.minutes


@dataclass(frozen=True, kw_only=True)
class Slot:
    """One evening."""

    week: int
    evening: int
    minutes: float


@dataclass(frozen=True, kw_only=True)
class Done:
    """Minutes of one evening spent on one job."""

    job: int  # its place in the list of jobs
    slot: Slot
    minutes: float


def slots_of(weeks, evenings_a_week, evening_hours):
    """Evenings of each week; a part of an evening a week is a shorter last one."""
    whole, part = int(evenings_a_week), evenings_a_week - int(evenings_a_week)
    lengths = [60.0 * evening_hours] * whole
    if part * evening_hours > TINY:
        lengths.append(60.0 * evening_hours * part)
    return [
        Slot(week=week, evening=number + 1, minutes=minutes)
        for week in range(weeks)
        for number, minutes in enumerate(lengths)
    ]


def schedule(jobs, slots):
    """What is done when: on each evening the job due first of those whose gear is there."""
    left = [job.work for job in jobs]
    ranked = sorted(range(len(jobs)), key=lambda n: (jobs[n].due, jobs[n].order, n))
    done = []
    for slot in slots:
        room = slot.minutes
        for number in ranked:
            if room <= TINY:
                break
            if left[number] <= TINY or jobs[number].release > slot.week:
                continue
            spent = min(room, left[number])
            left[number] -= spent
            room -= spent
            done.append(Done(job=number, slot=slot, minutes=spent))
    return done


def finished(jobs, done):
    """job -> [(week, whole pieces finished in it)]; pieces that no evening is left for are missing."""
    spent: dict = defaultdict(float)
    told: dict = defaultdict(int)
    weeks: dict = defaultdict(lambda: defaultdict(int))
    for act in done:
        job = jobs[act.job]
        spent[act.job] += act.minutes
        now = job.units if job.work <= spent[act.job] + TINY else int(spent[act.job] / job.minutes + TINY)
        if now > told[act.job]:
            weeks[act.job][act.slot.week] += now - told[act.job]
            told[act.job] = now
    for number, job in enumerate(jobs):
        if job.work <= TINY and job.units:
            weeks[number][job.release] = job.units
    return {number: sorted(found.items()) for number, found in weeks.items()}


def latest_starts(jobs, slots):
    """job -> last week in which it may be begun with all in time, worked as late as may be; None where not all can be.

    Evenings are filled from the last back, the job whose gear comes last first: the mirror of earliest due date, so that
    where there is any plan with all in time this is one.
    """
    left = [job.work for job in jobs]
    starts: dict = dict.fromkeys(range(len(jobs)))
    ranked = sorted(range(len(jobs)), key=lambda n: (-jobs[n].release, -jobs[n].due, -jobs[n].order, -n))
    for slot in reversed(slots):
        room = slot.minutes
        for number in ranked:
            job = jobs[number]
            if room <= TINY:
                break
            if left[number] <= TINY or job.due < slot.week or job.release > slot.week:
                continue
            spent = min(room, left[number])
            left[number] -= spent
            room -= spent
            if left[number] <= TINY:
                starts[number] = slot.week
    for number, job in enumerate(jobs):
        if job.work <= TINY and job.due >= job.release:
            starts[number] = job.due
    return starts
