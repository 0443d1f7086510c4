"""The child that weighs other values: reads (parent, task) pickled, then a line for each end; answers a line each.

Takes a Task and the numbers of its ends on standard input; gives JSON lines. Ends itself when the parent is gone.
"""

import json
import os
import pickle
import sys

from planner.checking.task import weighed
from planner.solution.processes import end_with, own_output


def main():
    out = os.fdopen(own_output(), "w", encoding="utf-8")
    parent, task = pickle.load(sys.stdin.buffer)
    end_with(parent)
    for line in sys.stdin.buffer:
        number = int(line)
        out.write(json.dumps({"end": number, **weighed(task, number)}) + "\n")
        out.flush()


if __name__ == "__main__":
    main()
