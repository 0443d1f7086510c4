"""The second process of a curve, as this one sees it."""

import os
import subprocess
import sys
import time

import pytest

from planner.sizing.reading import problem_of
from planner.solution.nearby import companion as module
from planner.solution.nearby.companion import Companion
from planner.solution.processes import ROOT
from tests.planner.small_problems import small, years

SETTINGS = {"gap": 0.001, "seconds": 60.0, "packs": None}


def problem():
    return problem_of(small(scenarios=years(*[(1 / 12, units) for units in range(1, 13)])))


def silent(*told):
    pass


def is_gone(process):
    try:
        os.kill(process, 0)
    except ProcessLookupError:
        return True
    with open(f"/proc/{process}/stat", encoding="ascii") as file:
        return file.read().split()[2] == "Z"


def test_it_answers_for_the_budgets_it_is_asked():
    with Companion(problem()) as companion:
        companion.ask([25, 60], [25], **SETTINGS)
        found, fractions = companion.answer(60.0, silent)
    assert [best.packs for best in found.values()] == [{("boxes", 0): 2}, {("boxes", 0): 6}]
    assert fractions[60] >= found[60].objective - 1e-9


def test_nothing_is_left_running_asked_or_not():
    with Companion(problem()) as companion:
        pass
    assert companion.process.poll() is not None


def test_far_over_its_time_it_is_left_and_ended(monkeypatch):
    monkeypatch.setattr(module, "GRACE_SECONDS", 0.0)
    told = []
    with Companion(problem()) as companion:
        assert companion.answer(0.6, lambda *row: told.append(row)) == ({}, {})
    assert told[0] == ("other budgets", None, None)
    assert companion.process.poll() is not None


def test_a_process_that_broke_has_no_answer():
    with Companion(problem()) as companion:
        companion.process.kill()
        companion.process.wait()
        companion.ask([25], [], **SETTINGS)
        assert companion.answer(5.0, silent) is None


PARENT = """
import sys, time
from planner.sizing.reading import problem_of
from planner.solution.nearby.companion import Companion
from tests.planner.small_problems import small, years
companion = Companion(problem_of(small(scenarios=years((1.0, 3)))))
print(companion.process.pid, flush=True)
time.sleep(60)
"""


@pytest.mark.skipif(not os.path.exists("/proc/self/stat"), reason="reads /proc")
def test_it_ends_when_its_parent_is_killed():
    parent = subprocess.Popen([sys.executable, "-c", PARENT], stdout=subprocess.PIPE, cwd=ROOT)
    try:
        process = int(parent.stdout.readline())
        assert not is_gone(process)
    finally:
        parent.kill()
        parent.wait()
        parent.stdout.close()
    until = time.monotonic() + 20
    while not is_gone(process) and time.monotonic() < until:
        time.sleep(0.1)
    assert is_gone(process)
