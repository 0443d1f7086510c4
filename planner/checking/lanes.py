"""Two children that weigh ends side by side, each given the next as it answers; a time limit and a stop that hold.

Takes a Task; gives {number of the end: its figures} of those reached. On cancel, overtime or the parent's end the
children are killed with all they started.
"""

import contextlib
import json
import os
import pickle
import selectors
import tempfile
import time

from planner.solution import Cancelled
from planner.solution.processes import end_session, started

LOOK_SECONDS = 0.2
LANES = 2


def answers_of(task, *, seconds, lanes=LANES, tell=lambda done, of: None, cancelled=None):
    """Figures by number of the end, as far as the seconds reach; tell(done, of) is told after each."""
    found: dict[int, dict] = {}
    deadline = time.monotonic() + seconds
    count = min(lanes, len(task.ends))
    with tempfile.TemporaryFile() as errors, contextlib.ExitStack() as stack:
        children = []
        for _ in range(count):
            child = started("planner.checking.child", stderr=errors, start_new_session=True)
            stack.callback(end_session, child)
            children.append(child)
        for child in children:
            _give(child, pickle.dumps((os.getpid(), task)))
        _work(children, len(task.ends), found, deadline, tell, cancelled)
        if not found and time.monotonic() < deadline and task.ends:
            errors.seek(0)
            last = errors.read()[-2000:].decode(errors="replace").strip()
            raise RuntimeError(f"the check's processes ended without an answer: {last}")
    return found


def _work(children, count, found, deadline, tell, cancelled):
    """Hands out ends and gathers answers until all are in or time is out."""
    waiting = iter(range(count))
    with selectors.DefaultSelector() as selector:
        for child in children:
            selector.register(child.stdout, selectors.EVENT_READ, [child, b""])
            _give_next(child, waiting)
        while len(found) < count and selector.get_map() and time.monotonic() < deadline:
            if cancelled is not None and cancelled():
                raise Cancelled("the check was called off")
            for key, _ in selector.select(LOOK_SECONDS):
                child, before = key.data
                chunk = os.read(child.stdout.fileno(), 1 << 16)
                if not chunk:
                    selector.unregister(child.stdout)
                    continue
                *lines, key.data[1] = (before + chunk).split(b"\n")
                for line in lines:
                    answer = json.loads(line)
                    found[answer.pop("end")] = answer
                    tell(len(found), count)
                    _give_next(child, waiting)


def _give_next(child, waiting):
    number = next(waiting, None)
    if number is not None:
        _give(child, f"{number}\n".encode())


def _give(child, data):
    """A child that is gone is told by its silence."""
    with contextlib.suppress(BrokenPipeError):
        child.stdin.write(data)
        child.stdin.flush()
