"""The queue of writers: first come, first served, over threads and processes; a killed one holds nobody up."""

import os
import signal
import subprocess
import sys
import threading
import time
from pathlib import Path

import pytest

from apiary.sqlite.queue import DOOR, HAS_LOCKS, Queue

pytestmark = pytest.mark.skipif(not HAS_LOCKS, reason="queues are kept on Linux only")
ROOT = Path(__file__).resolve().parent.parent.parent.parent
LONG = 60.0
HOLD = """
import sys, time
from apiary.sqlite.queue import Queue
queue = Queue(sys.argv[1])
print(queue.enter(60.0), flush=True)
time.sleep(600)
"""


@pytest.fixture
def path(tmp_path):
    return str(tmp_path / "queue")


@pytest.fixture
def places(path):
    """Makes places in one line; all are closed at the end."""
    made = []

    def place():
        made.append(Queue(path))
        return made[-1]

    yield place
    for queue in made:
        queue.close()


def until(found):
    """Waits for something that must come, a minute at most."""
    end = time.monotonic() + LONG
    while not found():
        assert time.monotonic() < end, "it never came"
        time.sleep(0.002)


def stand_in_line(queue, onlooker, then):
    """A thread that enters, tells `then` and leaves; returns once it stands in line."""

    def wait():
        assert queue.enter(LONG)
        then()
        queue.leave()

    since = time.monotonic_ns()
    thread = threading.Thread(target=wait)
    thread.start()
    until(lambda: onlooker._is_locked(since, time.monotonic_ns() - since))
    return thread


def test_writers_enter_in_the_order_in_which_they_came(places):
    first, order = places(), []
    assert first.enter(0.0)
    waiting = [stand_in_line(places(), first, lambda n=n: order.append(n)) for n in range(6)]
    first.leave()
    for thread in waiting:
        thread.join(LONG)
    assert order == list(range(6))


def test_who_leaves_and_comes_again_is_behind_who_waited_meanwhile(places):
    first, order = places(), []
    assert first.enter(0.0)
    waiting = [stand_in_line(places(), first, lambda n=n: order.append(n)) for n in range(3)]
    first.leave()
    assert first.enter(LONG)
    assert order == [0, 1, 2]
    first.leave()
    for thread in waiting:
        thread.join(LONG)


def test_only_one_is_in_at_a_time(places):
    one, other = places(), places()
    assert one.enter(0.0)
    assert not other.enter(0.02)
    one.leave()
    assert other.enter(0.0)
    assert not one.enter(0.0)


def test_who_gave_up_holds_up_nobody_behind(places):
    first, order = places(), []
    assert first.enter(0.0)
    assert not places().enter(0.02)
    behind = stand_in_line(places(), first, lambda: order.append("behind"))
    first.leave()
    behind.join(LONG)
    assert order == ["behind"]


def test_entering_twice_is_once_and_leaving_twice_harms_nobody(places):
    one, other = places(), places()
    assert one.enter(0.0) and one.enter(0.0)
    one.leave()
    assert other.enter(0.0)
    one.leave()
    assert not one.enter(0.0)


def test_a_closed_place_is_given_up(places):
    one, other = places(), places()
    assert one.enter(0.0)
    one.close()
    assert other.enter(0.0)
    other.leave()
    assert one.enter(0.0)


def test_a_process_killed_while_it_is_in_holds_nobody_up(places, path):
    command = [sys.executable, "-c", HOLD, path]
    holder = subprocess.Popen(command, cwd=ROOT, stdout=subprocess.PIPE, text=True)
    try:
        assert holder.stdout.readline() == "True\n"
        assert not places().enter(0.02)
        holder.send_signal(signal.SIGKILL)
        holder.wait()
        assert places().enter(LONG)
    finally:
        holder.kill()
        holder.wait()
        holder.stdout.close()


def test_a_forked_child_neither_has_its_parents_turn_nor_ends_it(places):
    one, other = places(), places()
    assert one.enter(0.0)
    child = os.fork()
    if child == 0:
        had = one.is_in or one.file is not None
        one.leave()
        one.close()
        os._exit(1 if had else 0)
    assert os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]) == 0
    assert not other.enter(0.0)
    assert other._is_locked(DOOR, 1)


def test_where_no_file_can_be_made_nobody_is_held_up(tmp_path):
    assert Queue(str(tmp_path / "nowhere" / "queue")).enter(0.0)


def test_where_the_disk_keeps_no_locks_nobody_is_held_up(places, monkeypatch):
    def refused(*_):
        raise OSError("no locks available")

    one, other = places(), places()
    assert one.enter(0.0)
    monkeypatch.setattr(Queue, "_ask", refused)
    assert other.enter(0.0) and not other.is_in


def test_a_wait_that_is_broken_off_gives_the_place_up(places, monkeypatch):
    def broken_off(*_):
        raise KeyboardInterrupt

    one, other = places(), places()
    monkeypatch.setattr(Queue, "_is_locked", broken_off)
    with pytest.raises(KeyboardInterrupt):
        one.enter(LONG)
    monkeypatch.undo()
    assert other.enter(0.0)


def test_where_the_machine_has_no_such_locks_nobody_is_held_up(places, path, monkeypatch):
    assert places().enter(0.0)
    monkeypatch.setattr("apiary.sqlite.queue.HAS_LOCKS", False)
    assert places().enter(0.0)
