"""The tests that use the database once more on PostgreSQL: another DATABASE_URL, in a process of their own."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.conftest import need

ROOT = Path(__file__).resolve().parent.parent
FOLDERS = ["tests/apiary", "tests/inventory", "tests/planner"]


@pytest.mark.postgres
def test_acts_questions_and_runs_hold_on_postgresql_as_on_sqlite():
    url = os.environ.get("POSTGRES_URL")
    need(url, "a PostgreSQL server (its address in POSTGRES_URL)")
    command = [sys.executable, "-m", "pytest", "-p", "no:cacheprovider", *FOLDERS]
    command += ["-m", "django_db and not browser and not office and not long"]
    done = subprocess.run(
        command,
        cwd=ROOT,
        env={**os.environ, "DATABASE_URL": url},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout[-6000:] + done.stderr[-2000:]
    assert " passed" in done.stdout
