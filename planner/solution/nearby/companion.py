"""The second process of a curve: one half of its budgets, taken while this process takes the other.

Takes a Problem at once, so that its scenarios are built meanwhile, and later the budgets; gives what a sweep gives.
The second process ends with this one; see companion_process.py.
"""

import os
import pickle
import selectors
import subprocess
import tempfile
import time
from typing import Any

from planner.solution.processes import end_alone, started

LOOK_SECONDS = 0.5
GRACE_SECONDS = 3.0


class Companion:
    """To be ended (`with`), whether it has answered or not."""

    def __init__(self, problem):
        with tempfile.TemporaryFile() as file:
            pickle.dump(problem, file)
            file.seek(0)
            self.process: Any = started(
                "planner.solution.nearby.companion_process",
                str(os.getpid()),
                str(file.fileno()),
                stderr=subprocess.DEVNULL,
                pass_fds=(file.fileno(),),
            )

    def __enter__(self):
        return self

    def __exit__(self, *fault):
        end_alone(self.process)

    def ask(self, budgets, closely, **settings):
        """Hands over the budgets; `settings` as companion_process.py takes them."""
        try:
            pickle.dump((budgets, closely, settings), self.process.stdin)
            self.process.stdin.flush()
        except BrokenPipeError:
            return  # it is gone: there will be no answer

    def answer(self, seconds, tell):
        """What was found for the budgets asked for; None where the process broke or is far over its time."""
        until, data = time.monotonic() + seconds + GRACE_SECONDS, b""
        with selectors.DefaultSelector() as selector:
            selector.register(self.process.stdout, selectors.EVENT_READ)
            while time.monotonic() < until:
                if not selector.select(LOOK_SECONDS):
                    tell("other budgets", None, None)
                    continue
                chunk = os.read(self.process.stdout.fileno(), 1 << 16)
                if not chunk:
                    return pickle.loads(data) if data and self.process.wait() == 0 else None
                data += chunk
        return {}, {}
