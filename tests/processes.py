"""Real processes on a data folder of their own: books with an invented outfit, workers, and the solvers they start.

Reads the system's list of processes and the books' file; starts and ends only what it started.
"""

import contextlib
import os
import signal
import sqlite3
import subprocess
import sys
import time
from pathlib import Path

MANAGE = Path(__file__).resolve().parents[1] / "manage.py"
PATIENCE = 90  # seconds a slow machine may take
PREPARE = """
import django; django.setup()
from apiary import serving
from tests import makers
from tests.planner import outfit
serving.prepare()
outfit.make_outfit()
outfit.make_season()
makers.make_person()
"""
ASK = """
import django; django.setup()
from django.utils import timezone
from planner import runs
from planner.models import Season
for _ in range({runs}):
    print(runs.ask(Season.objects.get(), who=None, now=timezone.now(), **{settings!r}).pk)
"""


def waits_until(condition, seconds=PATIENCE):
    """What the condition gives once it gives something."""
    deadline = time.monotonic() + seconds
    while time.monotonic() < deadline:
        if found := condition():
            return found
        time.sleep(0.02)
    raise AssertionError("waited in vain")


class Books:
    """A data folder with an outfit, a season and a person, and what works on it."""

    def __init__(self, folder):
        self.folder, self.started = folder, []
        kept = {name: value for name, value in os.environ.items() if name != "DATABASE_URL"}
        self.env = {
            **kept,
            "DATA_DIR": str(folder),
            "DJANGO_SETTINGS_MODULE": "apiary.settings",
            "PYTHONUNBUFFERED": "1",
            "PYTHONPATH": str(MANAGE.parent),
        }
        self.script(PREPARE)

    def script(self, text):
        done = subprocess.run(
            [sys.executable, "-c", text], env=self.env, capture_output=True, text=True, check=False
        )
        assert done.returncode == 0, done.stderr
        return done.stdout.strip()

    def ask(self, runs=1, **settings):
        """Numbers of runs put in the queue."""
        return [int(word) for word in self.script(ASK.format(runs=runs, settings=settings)).split()]

    def command(self, *words):
        """A command of manage.py under way, its words in a pipe."""
        process = subprocess.Popen(
            [sys.executable, str(MANAGE), *words],
            env=self.env,
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            text=True,
        )
        self.started.append(process)
        return process

    def worker(self, *words):
        return self.command("work_runs", "--rest", "0.1", *words)

    def run(self, pk):
        """A run's row as it stands."""
        with contextlib.closing(self._open()) as books:
            return dict(books.execute("SELECT * FROM planner_run WHERE id = ?", [pk]).fetchone())

    def change(self, statement, *values):
        with contextlib.closing(self._open()) as books, books:
            books.execute(statement, values)

    def let_lease_run_out(self, pk):
        """As if the lease's minutes had gone by."""
        self.change("UPDATE planner_run SET leased_until = '2001-01-01 00:00:00' WHERE id = ?", pk)

    def _open(self):
        books = sqlite3.connect(self.folder / "keeper.sqlite3", timeout=20)
        books.row_factory = sqlite3.Row
        return books

    def solvers(self):
        """Process numbers of the solvers at work for these books."""
        found = set()
        for entry in Path("/proc").glob("[0-9]*"):
            with contextlib.suppress(OSError):
                line, surroundings = (entry / "cmdline").read_bytes(), (entry / "environ").read_bytes()
                if b"planner.solution.child" in line and f"DATA_DIR={self.folder}\0".encode() in surroundings:
                    found.add(int(entry.name))
        return found

    def end(self):
        for process in self.started:
            if process.poll() is None:
                process.send_signal(signal.SIGKILL)
            process.wait()
            process.stdout.close()
