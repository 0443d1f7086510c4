"""Runs a measurement in a process of its own, within a time limit, and gives what it found.

Takes a task (a function of a module) and its settings; gives its result, or None where it died; overtime is raised.
A process of its own: a solver keeps threads and memory of the run before, and a killed one would leave others running.
"""

import multiprocessing
import os
import signal
import time
from contextlib import suppress


class Overtime(Exception):
    """The task was ended after its time."""


class Stopwatch:
    """Seconds since it was made, and those left of a total (None: no end)."""

    def __init__(self, total=None):
        self.began, self.total = time.monotonic(), total

    def spent(self):
        return time.monotonic() - self.began

    def left(self):
        return float("inf") if self.total is None else max(0.0, self.total - self.spent())


def apart(task, settings, *, seconds):
    """task(**settings) in a child of its own session, killed with all it started after `seconds`."""
    context = multiprocessing.get_context("spawn")
    ours, theirs = context.Pipe(duplex=False)
    child = context.Process(target=_work, args=(theirs, task, settings))
    child.start()
    theirs.close()
    patience = 1.0
    try:
        if not ours.poll(seconds):
            patience = 0.0
            raise Overtime
        return ours.recv()
    except EOFError:
        return None
    finally:
        _end(child, patience)
        ours.close()


def _work(pipe, task, settings):
    os.setsid()
    silence = os.open(os.devnull, os.O_WRONLY)
    os.dup2(silence, 1)  # solvers greet on the output, which is the figures'
    pipe.send(task(**settings))
    pipe.close()


def _end(child, patience):
    """Waits a moment for a child that is done; kills one that is not, with its session."""
    child.join(patience)
    if child.is_alive():
        with suppress(ProcessLookupError, PermissionError):
            os.killpg(child.pid, signal.SIGKILL)
        child.kill()
        child.join()


def timed(act):
    """(result, seconds) of calling act()."""
    began = time.perf_counter()
    result = act()
    return result, time.perf_counter() - began
