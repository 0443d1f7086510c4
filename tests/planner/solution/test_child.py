"""The child's talk: JSON lines, nothing else."""

import json
import os
import pickle
import subprocess
import sys

from planner.solution import plan_of
from planner.solution.child import _teller
from planner.solution.processes import ROOT
from tests.planner.small_problems import small_problem


def test_it_speaks_json_lines_only_and_ends_with_the_plan():
    settings = {"solver": "highs", "gap": 0.0, "seconds": 30.0}
    task = pickle.dumps((os.getpid(), "solve", (small_problem(),), settings))
    ended = subprocess.run(
        [sys.executable, "-m", "planner.solution.child"],
        input=task,
        capture_output=True,
        cwd=ROOT,
        timeout=60,
        check=True,
    )
    lines = [json.loads(line) for line in ended.stdout.splitlines()]
    assert plan_of(lines[-1]["answer"]).objective == 60
    assert all(set(line) == {"stage", "bound", "gap"} for line in lines[:-1])


def test_progress_is_told_at_once_on_a_new_stage_and_else_twice_a_second(tmp_path):
    path = tmp_path / "out"
    with path.open("w") as out:
        tell = _teller(out)
        for bound in (1.0, 2.0, 3.0):
            tell("solving", bound, None)
        tell("pricing", 3.0, None)
    told = [json.loads(line) for line in path.read_text().splitlines()]
    assert [(row["stage"], row["bound"]) for row in told] == [("solving", 1.0), ("pricing", 3.0)]
