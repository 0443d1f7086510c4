"""The child that weighs other values: reads (parent, task) pickled, then a line for each end; answers a line each.

Takes a Task and the numbers of its ends on standard input; gives JSON lines. Ends itself when the parent is gone.
"""

import json
import os
import pickle
import signal
import sys
import threading
import time

from planner.checking.task import weighed

LOOK_SECONDS = 0.5


def main():
    out = os.fdopen(os.dup(1), "w", encoding="utf-8")
    os.dup2(os.open(os.devnull, os.O_WRONLY), 1)  # solvers greet on standard output
    parent, task = pickle.load(sys.stdin.buffer)
    threading.Thread(target=_watch, args=(parent,), daemon=True).start()
    for line in sys.stdin.buffer:
        number = int(line)
        out.write(json.dumps({"end": number, **weighed(task, number)}) + "\n")
        out.flush()


def _watch(parent):
    """Kills this session when the parent is gone."""
    while os.getppid() == parent:
        time.sleep(LOOK_SECONDS)
    os.killpg(os.getpgid(0), signal.SIGKILL)


if __name__ == "__main__":
    main()
