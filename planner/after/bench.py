"""The workbench told: jobs by kind and week wanted, evenings, and whether all is done in time.

Takes the shed's jobs and the answers about evenings; gives the report's Bench and the weeks in which pieces are done.
"""

from collections import defaultdict

from planner.after.evenings import finished, latest_starts, schedule, slots_of
from planner.after.records import Bench, BenchJob, Evening
from planner.plan.words import day_words, number, week_day

MOST_EVENINGS = 7


class Workbench:
    """All jobs on all evenings of the year."""

    def __init__(self, jobs, assumptions):
        self.jobs, self.answers = jobs, assumptions
        self.slots = slots_of(assumptions.weeks, assumptions.evenings_a_week, assumptions.evening_hours)
        self.done = schedule(jobs, self.slots)
        self.finished = finished(jobs, self.done)

    def ready(self, job):
        """[(week from which they can be loaded, pieces)] of one job: the week after they are finished."""
        return [(week + 1, pieces) for week, pieces in self.finished.get(job, ())]

    def late(self, job):
        """Pieces of the job that are not finished when due."""
        due = self.jobs[job].due
        in_time = sum(pieces for week, pieces in self.finished.get(job, ()) if week <= due)
        return self.jobs[job].units - in_time

    def told(self, names, day):
        """`names`: recipe -> words."""
        rows = self._jobs(names, day)
        minutes = sum(job.work for job in self.jobs)
        begin = self._begin_by(day)
        return Bench(
            evenings_a_week=self.answers.evenings_a_week,
            evening_hours=self.answers.evening_hours,
            jobs=rows,
            evenings=self._evenings(names, day),
            minutes=minutes,
            begin_by=begin,
            said=self._said(rows, minutes, begin),
        )

    def _begin_by(self, day):
        starts = latest_starts(self.jobs, self.slots)
        if not self.jobs or any(starts[job] is None for job in range(len(self.jobs))):
            return None
        return week_day(day, min(starts.values()))

    def _jobs(self, names, day):
        starts = latest_starts(self.jobs, self.slots)
        grouped: dict = defaultdict(list)
        for index, job in enumerate(self.jobs):
            grouped[job.due, job.code].append(index)
        rows = []
        for (due, recipe), alike in sorted(grouped.items()):
            first = [starts[index] for index in alike]
            ends = [self.finished.get(index, [(None, 0)])[-1][0] for index in alike]
            rows.append(
                BenchJob(
                    recipe=recipe,
                    name=names[recipe],
                    pieces=sum(self.jobs[index].units for index in alike),
                    minutes_each=self.jobs[alike[0]].minutes,
                    gear_there_on=week_day(day, max(self.jobs[index].release for index in alike)),
                    wanted_on=week_day(day, due + 1),
                    start_by=None if None in first else week_day(day, min(first)),
                    done_on=None if None in ends else week_day(day, max(ends)),
                    late_pieces=sum(self.late(index) for index in alike),
                )
            )
        return tuple(rows)

    def _evenings(self, names, day):
        spent: dict = defaultdict(lambda: [0.0, 0.0])
        for act in self.done:
            job = self.jobs[act.job]
            row = spent[act.slot.week, act.slot.evening, job.code]
            row[0] += act.minutes
            row[1] += act.minutes / job.minutes
        return tuple(
            Evening(
                week=week,
                day=week_day(day, week),
                evening=evening,
                recipe=recipe,
                name=names[recipe],
                pieces=round(pieces, 1),
                minutes=round(minutes, 1),
            )
            for (week, evening, recipe), (minutes, pieces) in sorted(spent.items())
        )

    def _said(self, rows, minutes, begin):
        if not rows:
            return "Nothing is to be assembled."
        hours = (
            f"{number(minutes / 60)} hours at the bench"
            if minutes >= 90
            else f"{number(minutes)} minutes at the bench"
        )
        if begin is not None:
            return f"{hours}, all done in time. Begin in the week of {day_words(begin)} at the latest."
        late = sum(row.late_pieces for row in rows)
        if not late:
            return f"{hours}, all done in time when begun as soon as the gear is there."
        first = next(row for row in rows if row.late_pieces)
        return (
            f"{hours}: not all of it can be done in time. {number(late)} pieces are late, first {first.name} "
            f"wanted by {day_words(first.wanted_on)}. {self._enough_evenings()}"
        )

    def _enough_evenings(self):
        """What more evenings would do."""
        answers = self.answers
        least = int(answers.evenings_a_week) + 1
        for evenings in range(least, MOST_EVENINGS + 1):
            slots = slots_of(answers.weeks, evenings, answers.evening_hours)
            ends = finished(self.jobs, schedule(self.jobs, slots))
            made = [
                sum(n for week, n in ends.get(i, ()) if week <= job.due) for i, job in enumerate(self.jobs)
            ]
            if all(got == job.units for got, job in zip(made, self.jobs, strict=True)):
                return f"{evenings} evenings a week would do."
        return (
            "More evenings alone do not help: some gear comes too late or is wanted before the first evening."
        )
