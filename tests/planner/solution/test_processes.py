"""Processes that work for this one."""

import os
import signal
import subprocess
import sys

import pytest

from planner.solution.processes import ROOT, end_alone, end_session, started


def test_a_module_runs_with_this_code_on_its_path_wherever_it_starts(tmp_path):
    process = started("planner.solution.threads", cwd=tmp_path)
    assert process.wait(60) == 0
    end_alone(process)
    assert process.stdin.closed and process.stdout.closed


def test_it_is_told_its_words_and_spoken_with_through_pipes():
    process = started("json.tool", "--compact")
    answer, _ = process.communicate(b"[1, 2]", timeout=60)
    assert answer.strip() == b"[1,2]"


@pytest.mark.parametrize(("end", "asked"), [(end_session, {"start_new_session": True}), (end_alone, {})])
def test_ended_it_is_gone_and_ending_it_again_is_harmless(end, asked):
    process = started("json.tool", **asked)
    for _ in range(2):
        end(process)
    assert process.returncode == -signal.SIGKILL


def run(script):
    command = [sys.executable, "-c", f"import os, time\nfrom planner.solution.processes import *\n{script}"]
    return subprocess.run(
        command, cwd=ROOT, capture_output=True, start_new_session=True, timeout=60, check=False
    )


def test_what_a_solver_prints_is_not_among_the_answers():
    done = run("out = own_output()\nos.system('echo greeting')\nos.write(out, b'answer')")
    assert (done.returncode, done.stdout) == (0, b"answer")


@pytest.mark.parametrize("session", [True, False])
def test_a_process_whose_parent_is_gone_ends_itself(session):
    assert run(f"end_with(1, session={session})\ntime.sleep(50)").returncode == -signal.SIGKILL
    assert run(f"end_with({os.getpid()}, session={session})\ntime.sleep(1)").returncode == 0
