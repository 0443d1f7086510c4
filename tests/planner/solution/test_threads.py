"""How many threads HiGHS has in a process."""

import subprocess
import sys

from planner.solution.processes import ROOT

COUNT = """
import highspy
from planner.solution.threads import keep_to_one_thread
keep_to_one_thread()
solver = highspy.Highs()
solver.setOptionValue("output_flag", False)
solver.setOptionValue("threads", {threads})
solver.addVar(0.0, 1.0)
print(solver.run().name)
"""


def answer(threads):
    command = [sys.executable, "-c", COUNT.format(threads=threads)]
    return subprocess.run(command, capture_output=True, text=True, cwd=ROOT, check=True).stdout.split()[-1]


def test_after_it_a_solve_has_one_thread_and_no_more_can_be_had():
    assert [answer(0), answer(1)] == ["kOk", "kOk"]
    assert answer(2) == "kError"
