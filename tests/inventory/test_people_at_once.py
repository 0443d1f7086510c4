"""People at once and processes killed: on a real database file (SQLite) or server (PostgreSQL).

Acts interleaved equal the same acts one after another in the order the books took them; the last five boxes go to
both, the second's as found; a kill at any moment leaves an act whole or absent.
"""

import json
import os
import random
import signal
import subprocess
import sys
import time
from pathlib import Path
from urllib.parse import quote

import pytest
from django.core.management import call_command
from django.db import connection

from tests.inventory import beside

ROOT = Path(__file__).resolve().parent.parent.parent


def environment(folder):
    """A process's: a file of its own in the folder on SQLite, the test's database on PostgreSQL."""
    kept = {name: value for name, value in os.environ.items() if name != "DATABASE_URL"}
    kept |= {"DATA_DIR": str(folder), "DJANGO_SETTINGS_MODULE": "apiary.settings"}
    if connection.vendor == "postgresql":
        told = {name: quote(str(value), safe="") for name, value in connection.settings_dict.items()}
        kept["DATABASE_URL"] = "postgres://{USER}:{PASSWORD}@{HOST}:{PORT}/{NAME}".format(**told)
    return kept


def command(what, *words):
    return [sys.executable, "-m", "tests.inventory.beside", what, *map(str, words)]


def beside_us(folder, what, *words):
    """What the play printed."""
    done = subprocess.run(
        command(what, *words),
        cwd=ROOT,
        env=environment(folder),
        capture_output=True,
        text=True,
        timeout=300,
        check=False,
    )
    assert done.returncode == 0, done.stderr[-3000:]
    return json.loads(done.stdout.splitlines()[-1])


@pytest.mark.django_db(transaction=True)
def test_acts_of_several_people_at_once_equal_the_same_acts_in_some_order(tmp_path):
    (tmp_path / "at-once").mkdir()
    (tmp_path / "in-order").mkdir()
    at_once = beside_us(tmp_path / "at-once", "interleaved")
    assert at_once["faults"] == []
    assert len(at_once["order"]) + len(at_once["refused"]) == beside.PEOPLE * beside.ACTS
    if connection.vendor == "postgresql":
        call_command("flush", interactive=False, verbosity=0)
    in_order = beside_us(tmp_path / "in-order", "in_order", *at_once["order"])
    assert in_order["taken"]
    assert in_order["wrote"] == at_once["wrote"]


@pytest.mark.django_db(transaction=True)
def test_two_people_take_the_last_five_boxes_and_the_second_five_are_booked_as_found(tmp_path):
    assert beside_us(tmp_path, "last_five") == {
        "found": [0, 0, 5],
        "at_the_yard": 10,
        "in_the_shed": 0,
        "asked_about": [True],
        "faults": [],
    }


def killed_at_random(folder, kills, seed):
    """So many processes killed while they write; after each the books are right and every act is whole."""
    chance, acts = random.Random(seed), 0
    beside_us(folder, "lay_out")
    for _ in range(kills):
        child = subprocess.Popen(
            command("post_on", acts), cwd=ROOT, env=environment(folder), stdout=subprocess.PIPE, text=True
        )
        try:
            assert child.stdout.readline(), "it ended before it began"
            time.sleep(chance.uniform(0.0, 0.4))
        finally:
            child.send_signal(signal.SIGKILL)
            child.wait()
            child.stdout.close()
        left = beside_us(folder, "left")
        assert (left["broken"], left["faults"]) == ([], [])
        assert left["acts"] > acts
        acts = left["acts"]
    assert left["evenings"] > 0


@pytest.mark.django_db(transaction=True)
def test_a_kill_at_any_moment_leaves_an_act_whole_or_absent(tmp_path):
    killed_at_random(tmp_path, kills=2, seed=1)


@pytest.mark.long
@pytest.mark.django_db(transaction=True)
def test_very_many_kills_leave_every_act_whole_or_absent(tmp_path):
    killed_at_random(tmp_path, kills=100, seed=2)
