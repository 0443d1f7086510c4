"""The check's children: all ends answered, and none left running after a stop, an overtime or an end."""

import os
import subprocess
import time

import pytest

from planner.checking.check import task_of
from planner.checking.lanes import answers_of
from planner.solution import Cancelled
from tests.planner.checking.small import GAP, doubts


def running():
    """Children of the check that this very process started and that still run."""
    lines = subprocess.run(["ps", "-eo", "ppid,pid,args"], capture_output=True, text=True, check=True).stdout
    rows = [line.split(None, 2) for line in lines.splitlines() if "planner.checking.child" in line]
    return [row for row in rows if row[0] == str(os.getpid())]


@pytest.fixture
def task(planned):
    whole, told, problem, plan = planned
    return task_of(
        whole, told, problem, plan, seed=1, gap=GAP, doubts=doubts("survival_share", "honey_price")
    )


def test_all_ends_are_answered_and_told(task):
    told = []
    found = answers_of(task, seconds=300, tell=lambda done, of: told.append((done, of)))
    assert sorted(found) == [0, 1, 2, 3]
    assert told == [(1, 4), (2, 4), (3, 4), (4, 4)]
    assert running() == []


def test_one_lane_says_the_same_as_two(task):
    two, one = answers_of(task, seconds=300), answers_of(task, seconds=300, lanes=1)
    assert {n: round(a["held"], 4) for n, a in one.items()} == {
        n: round(a["held"], 4) for n, a in two.items()
    }


def test_out_of_time_it_gives_what_it_has_and_leaves_nothing_running(task):
    began = time.monotonic()
    assert answers_of(task, seconds=0.3) == {}
    assert time.monotonic() - began < 30
    assert running() == []


def test_a_stop_leaves_nothing_running(task):
    asked = iter([False, False, True])
    with pytest.raises(Cancelled):
        answers_of(task, seconds=300, cancelled=lambda: next(asked, True))
    assert running() == []


def test_a_child_that_breaks_off_says_why(task):
    with pytest.raises(RuntimeError, match="ended without an answer"):
        answers_of(_Broken(task), seconds=60)


class _Broken:
    """Looks like a task with one end; a child cannot weigh it."""

    def __init__(self, task):
        self.ends = task.ends[:1]
        self.problem = None
