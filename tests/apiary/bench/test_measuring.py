"""Measurements apart: their result comes back, their overtime and death do not hurt."""

import os
import signal
import subprocess
import time
from pathlib import Path

import pytest

from apiary.bench.measuring import Overtime, Stopwatch, apart, timed


def doubled(*, number):
    print("a solver's greeting")
    return {"number": 2 * number, "process": os.getpid()}


def sleeping(*, note):
    asleep = subprocess.Popen(["sleep", "60"])
    Path(note).write_text(f"{asleep.pid}", encoding="utf-8")
    time.sleep(60)


def dying():
    os.kill(os.getpid(), signal.SIGKILL)


def is_alive(pid):
    try:
        return Path(f"/proc/{pid}/stat").read_text(encoding="utf-8").split()[2] != "Z"
    except FileNotFoundError:
        return False


def test_a_result_comes_from_another_process_and_its_chatter_is_kept_off_the_output(capfd):
    found = apart(doubled, {"number": 21}, seconds=30)
    assert found["number"] == 42 and found["process"] != os.getpid()
    assert "greeting" not in capfd.readouterr().out


def test_a_task_over_its_time_is_ended_with_all_it_started(tmp_path):
    note = tmp_path / "note"
    with pytest.raises(Overtime):
        apart(sleeping, {"note": str(note)}, seconds=4)
    pid = int(note.read_text(encoding="utf-8"))
    for _ in range(50):
        if not is_alive(pid):
            break
        time.sleep(0.1)
    assert not is_alive(pid)


def test_a_task_that_dies_gives_nothing():
    assert apart(dying, {}, seconds=30) is None


def test_a_stopwatch_without_end_has_always_time_left():
    assert Stopwatch().left() == float("inf")
    assert Stopwatch(0).left() == 0
    assert 0 < Stopwatch(1000).left() <= 1000


def test_timed_gives_the_result_with_its_seconds():
    result, seconds = timed(lambda: pytest.approx(1))
    assert result == 1 and seconds >= 0
