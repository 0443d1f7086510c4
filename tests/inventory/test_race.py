"""Many writers at once on a real database file (SQLite) or server (PostgreSQL): nothing lost, nothing twice."""

import os
import subprocess
import sys
from pathlib import Path

import pytest
from django.db import connection

from tests.inventory.race import ACTS, PEOPLE, STANDS, play

ROOT = Path(__file__).resolve().parent.parent.parent
EXPECTED = {
    "taken": STANDS,
    "refused": PEOPLE * ACTS - STANDS,
    "twins": 4,
    "acts": 1 + STANDS + 4,
    "movements": 1 + STANDS + 4,
    "faults": 0,
    "left": 0,
}


def in_a_process_of_its_own(folder):
    """Tests keep SQLite in memory; a race needs a file."""
    environment = {name: value for name, value in os.environ.items() if name != "DATABASE_URL"}
    environment |= {"DATA_DIR": str(folder), "DJANGO_SETTINGS_MODULE": "apiary.settings"}
    done = subprocess.run(
        [sys.executable, "-m", "tests.inventory.race"],
        cwd=ROOT,
        env=environment,
        capture_output=True,
        text=True,
        timeout=120,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    return done.stdout.strip()


@pytest.mark.django_db(transaction=True)
def test_eight_people_at_once_take_each_piece_once(tmp_path):
    if connection.vendor == "sqlite":
        assert in_a_process_of_its_own(tmp_path) == str(EXPECTED)
    else:
        assert play() == EXPECTED
