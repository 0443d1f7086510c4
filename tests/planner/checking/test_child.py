"""The check's child ends when its parent is gone."""

import os
import pickle
import subprocess
import sys
import time

from planner.solution.processes import ROOT


def test_a_child_whose_parent_is_another_ends_itself():
    child = subprocess.Popen(
        [sys.executable, "-m", "planner.checking.child"],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        start_new_session=True,
        cwd=ROOT,
    )
    child.stdin.write(pickle.dumps((1, None)))  # says its parent is process 1, which is not so
    child.stdin.flush()
    began = time.monotonic()
    while child.poll() is None and time.monotonic() - began < 60:
        time.sleep(0.1)
    assert child.poll() is not None and child.returncode != 0
    child.stdin.close()
    child.stdout.close()


def test_a_child_with_nothing_more_to_do_ends():
    done = subprocess.run(
        [sys.executable, "-m", "planner.checking.child"],
        input=pickle.dumps((os.getpid(), None)),
        cwd=ROOT,
        capture_output=True,
        check=False,
        timeout=120,
    )
    assert (done.returncode, done.stdout) == (0, b"")
