"""Hands runs to workers: the Run row is the queue, a lease on it says who works it and until when.

Takes a worker's name and the time; gives a run nobody else works, renews its lease with progress, gives it back.
Writes only lease, progress and the giving up after three attempts; what a run found is written by runs.py.
"""

import datetime as dt
import time

from django.db.models import F, Q
from django.utils import timezone

from planner.errors import RunStopped, RunTakenOver
from planner.models import Run

LEASE_SECONDS = 180  # longer than any stage stays silent; a killed worker's run waits this long
LAST_ATTEMPT = 3
BEAT_SECONDS = 1.0

STOPPED = "Stopped before it was done. Nothing was ordered; start it again when you like."
BROKE_OFF = "The planner broke off while {stage}. The run is taken up again, from the start."
LEFT = "The planner was stopped while {stage}. The run is taken up again, from the start."
GAVE_UP = (
    "The planner broke off {attempts} times, the last time while {stage}. Your books and answers are untouched. "
    "Try fewer seasons; if it breaks off again, keep this page and report it."
)


def take(worker, now):
    """The oldest run that waits or whose lease ran out, now leased to this worker; None if there is none."""
    _stop_abandoned(now)
    _give_up(now)
    free = Q(status=Run.Status.WAITING) | Q(status=Run.Status.WORKING, leased_until__lt=now)
    for run in Run.objects.filter(free, attempts__lt=LAST_ATTEMPT).order_by("id"):
        if leased := lease(run, worker, now):
            return leased
    return None


def lease(run, worker, now):
    """The run, leased to this worker, unless somebody else changed it since it was read: then None."""
    unchanged = Run.objects.filter(
        pk=run.pk, status=run.status, attempts=run.attempts, leased_until=run.leased_until
    )
    taken = unchanged.update(
        status=Run.Status.WORKING,
        worker=worker,
        attempts=F("attempts") + 1,
        leased_until=now + dt.timedelta(seconds=LEASE_SECONDS),
        started_at=now,
        stage="reading the books",
        bound=None,
        gap_reached=None,
        message=run.message if run.status == Run.Status.WAITING else _told(BROKE_OFF, run),
    )
    return Run.objects.select_related("season").get(pk=run.pk) if taken else None


def give_back(run, *, counted=True):
    """Lets another worker have it at once. Not `counted`: the worker was asked to leave, the run did nothing."""
    mine = _mine(run)
    for row in mine:
        mine.update(
            status=Run.Status.WAITING,
            worker="",
            leased_until=None,
            attempts=F("attempts") if counted else F("attempts") - 1,
            bound=None,
            gap_reached=None,
            message=_told(BROKE_OFF if counted else LEFT, row),
        )


def is_abandoned(run, now):
    """True where a run's lease ran out: its worker is gone."""
    return run.status == Run.Status.WORKING and run.leased_until is not None and run.leased_until < now


def silent_seconds(run, now):
    """Seconds since the run's worker was last heard; 0 where none has it."""
    if run.status != Run.Status.WORKING or run.leased_until is None:
        return 0
    return max(0, LEASE_SECONDS - int((run.leased_until - now).total_seconds()))


def _told(sentence, run):
    return sentence.format(stage=run.stage or "working", attempts=run.attempts)


def _stop_abandoned(now):
    """Runs the keeper asked to stop whose worker went before it heard of it."""
    Run.objects.filter(status=Run.Status.WORKING, leased_until__lt=now, cancel=True).update(
        status=Run.Status.CANCELLED, finished_at=now, leased_until=None, stage="", message=STOPPED
    )


def _give_up(now):
    """Runs that broke off at their last attempt fail with a message, whoever looks first."""
    worn = Q(status=Run.Status.WAITING) | Q(status=Run.Status.WORKING, leased_until__lt=now)
    for run in Run.objects.filter(worn, attempts__gte=LAST_ATTEMPT):
        Run.objects.filter(pk=run.pk, status=run.status, attempts=run.attempts).update(
            status=Run.Status.FAILED,
            finished_at=now,
            leased_until=None,
            message=_told(GAVE_UP, run),
        )


def _mine(run):
    return Run.objects.filter(pk=run.pk, status=Run.Status.WORKING, worker=run.worker, attempts=run.attempts)


class Beat:
    """The heartbeat of one leased run: called with each stage it writes progress and renews the lease.

    Raises RunStopped where the keeper asked to stop, RunTakenOver where the lease went to another worker,
    and whatever `leave` raises where this worker has to go. Writes once a second unless the stage changes.
    """

    def __init__(self, run, *, leave=lambda: None, clock=timezone.now, every_seconds=BEAT_SECONDS):
        self.run, self.leave, self.clock, self.every_seconds = run, leave, clock, every_seconds
        self.stage, self.written_at = run.stage, None

    def __call__(self, stage, bound=None, gap=None):
        self.leave()
        if stage != self.stage or self._due():
            self.stage = stage
            self._write(stage=stage[:40], bound=bound, gap_reached=gap)

    def cancelled(self):
        """True where the work should end: asked between the solver's reports, so it renews the lease too."""
        try:
            self.leave()
            if self._due():
                self._write()
        except (RunStopped, RunTakenOver):
            return True  # the next stage raises it again
        return False

    def _due(self):
        return self.written_at is None or time.monotonic() - self.written_at >= self.every_seconds

    def _write(self, **progress):
        lease = self.clock() + dt.timedelta(seconds=LEASE_SECONDS)
        if not _mine(self.run).update(leased_until=lease, **progress):
            raise RunTakenOver(f"run {self.run.pk} is worked by another worker")
        self.written_at = time.monotonic()
        if Run.objects.filter(pk=self.run.pk, cancel=True).exists():
            self.written_at = None
            raise RunStopped(f"run {self.run.pk} was stopped by the keeper")
