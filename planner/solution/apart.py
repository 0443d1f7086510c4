"""Solves in a child process of its own session: a time limit that holds, and nothing left running.

Takes a Problem and settings; gives a Plan. The child is killed with all it started on cancel, overtime or when this
process goes (the child watches; see child.py).
"""

import json
import os
import pickle
import selectors
import tempfile
import time

from planner.solution.plan_json import plan_of
from planner.solution.plans import no_plan
from planner.solution.processes import end_session, started
from planner.solution.records import TIME_LIMIT

GRACE_SECONDS = 120.0
LOOK_SECONDS = 0.2


class Cancelled(Exception):
    """The solve was called off; nothing of it is left running."""


def solve_apart(
    problem,
    *,
    solver="highs",
    gap=0.001,
    seconds=60.0,
    packs=None,
    prices=True,
    progress=None,
    cancelled=None,
    way="auto",
):
    """The plan, solved in a child. cancelled() is asked several times a second; progress(stage, bound, gap) is told."""
    settings = {
        "solver": solver,
        "gap": gap,
        "seconds": seconds,
        "packs": packs,
        "prices": prices,
        "way": way,
    }
    began = time.monotonic()
    task = "solve", (problem,), settings
    data = answer_apart(task, seconds=seconds, progress=progress, cancelled=cancelled)
    if data is None:
        return no_plan(
            TIME_LIMIT, "the solver did not end in time and was stopped", time.monotonic() - began, solver
        )
    return plan_of(data)


def answer_apart(task, *, seconds, progress=None, cancelled=None):
    """The JSON a child answers to a task (what, arguments, settings; see child.py); None where it ran out of time."""
    began = time.monotonic()
    with tempfile.TemporaryFile() as errors:
        child = started("planner.solution.child", stderr=errors, start_new_session=True)
        try:
            data = _converse(child, (os.getpid(), *task), seconds, progress, cancelled)
        finally:
            end_session(child)
        if data is None and time.monotonic() - began <= seconds:
            errors.seek(0)
            last = errors.read()[-2000:].decode(errors="replace").strip()
            raise RuntimeError(f"the solver's process ended without an answer: {last or _end_of(child)}")
    return data


def _end_of(child):
    """How a silent child went, in words."""
    if child.returncode < 0:
        return f"it was killed from outside (signal {-child.returncode}); start it again"
    return f"exit status {child.returncode}"


def _converse(child, task, seconds, progress, cancelled):
    """Hands the task over and listens until the answer comes; None where none came."""
    try:
        pickle.dump(task, child.stdin)
        child.stdin.close()
    except BrokenPipeError:
        return None
    deadline = time.monotonic() + seconds + GRACE_SECONDS
    waiting = b""
    with selectors.DefaultSelector() as selector:
        selector.register(child.stdout, selectors.EVENT_READ)
        while time.monotonic() < deadline:
            if cancelled is not None and cancelled():
                raise Cancelled("the solve was called off")
            if not selector.select(LOOK_SECONDS):
                continue
            chunk = os.read(child.stdout.fileno(), 1 << 16)
            if not chunk:
                return None
            *lines, waiting = (waiting + chunk).split(b"\n")
            for line in lines:
                message = json.loads(line)
                if "answer" in message:
                    return message["answer"]
                if progress is not None:
                    progress(message["stage"], message["bound"], message["gap"])
    return None
