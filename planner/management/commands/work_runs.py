"""Works waiting runs one after another, until told to leave or its parent is gone.

Takes runs from the queue; gives progress on their row. Told to leave (SIGTERM, Ctrl-C) in the midst of a run it
stops the solver, gives the run back uncounted and goes: another worker takes it up. Takes no run from books newer
than itself.
"""

import os
import signal
import socket
import time
import traceback

from django.core.management.base import CommandError
from django.db import OperationalError, close_old_connections, connection
from django.utils import timezone

from apiary.management.books_command import BooksCommand, are_newer_than, changes_known
from planner import queue, runs
from planner.errors import RunTakenOver

NEWER_BOOKS = (
    "The books were brought to a newer version than this worker: a run may ask what it does not know, so it takes "
    "up none. Runs wait; stop the planner and start its newest version."
)


class Leaving(BaseException):
    """The worker has to go. Not an Exception: nothing between here and the loop may swallow it."""


class Command(BooksCommand):
    help = (
        "Works out the orders asked for on the Season page, one after another. `start` runs it for you; "
        "run it by hand only if you serve the site some other way. It ends with the program that started it."
    )

    def add_arguments(self, parser):
        parser.add_argument("--once", action="store_true", help="Work what waits, then end.")
        parser.add_argument(
            "--rest", type=float, default=1.0, metavar="SECONDS", help="Pause between looks (default 1)."
        )

    def handle(self, *args, once=False, rest=1.0, **options):
        self.parent = os.getppid()
        self.worker = f"{socket.gethostname()[:60]}:{os.getpid()}"
        self.known = changes_known()
        before = {name: signal.signal(name, _told_to_leave) for name in (signal.SIGTERM, signal.SIGINT)}
        try:
            self._loop(once, rest)
        except Leaving as why:
            self.stdout.write(f"Leaving: {why}.")
        finally:
            for name, handler in before.items():
                signal.signal(name, handler)

    def _loop(self, once, rest):
        while True:
            self._leave_if_orphaned()
            if self._work_next():
                continue
            if once:
                return
            time.sleep(rest)

    def _work_next(self):
        """True where a run was worked."""
        if not connection.in_atomic_block:
            close_old_connections()
        try:
            if are_newer_than(self.known):
                raise CommandError(NEWER_BOOKS)
            run = queue.take(self.worker, timezone.now())
        except OperationalError as trouble:
            self.stderr.write(f"The database does not answer, trying again: {trouble}")
            return False
        if run is None:
            return False
        self._work(run)
        return True

    def _work(self, run):
        beat = queue.Beat(run, leave=self._leave_if_orphaned)
        try:
            run = runs.work(run, progress=beat, cancelled=beat.cancelled)
            self.stdout.write(f"Run {run.pk} is {run.get_status_display()}: {run.message}")
        except RunTakenOver as why:
            self.stderr.write(f"Dropped: {why}.")
        except Leaving:
            queue.give_back(run, counted=False)
            raise
        except Exception:
            self.stderr.write(traceback.format_exc())
            queue.give_back(run)

    def _leave_if_orphaned(self):
        if os.getppid() != self.parent:
            raise Leaving("the program that started this worker is gone")


def _told_to_leave(number, frame):
    """Raises once; a second signal does not break off the tidying up."""
    for name in (signal.SIGTERM, signal.SIGINT):
        signal.signal(name, signal.SIG_IGN)
    raise Leaving(f"told to by {signal.Signals(number).name}")
