"""The tests that use the database once more on PostgreSQL: another DATABASE_URL, in a process of their own.

CI runs those where the two databases may differ: writers, locks, constraints, balances, proofs, people at once, the
queue. All of them, pages too, run by `pytest -m long`.
"""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.conftest import need

ROOT = Path(__file__).resolve().parent.parent
FOLDERS = ["tests/apiary", "tests/inventory", "tests/planner"]
WHERE_THEY_MAY_DIFFER = [
    *("tests/apiary", "tests/inventory/loading"),
    *(
        "tests/inventory/ledger",
        "tests/inventory/proof",
        "tests/inventory/yardwork",
        "tests/inventory/counting",
    ),
    *("tests/inventory/test_people_at_once.py", "tests/inventory/test_books_at_random.py"),
    *("tests/inventory/test_proof.py", "tests/inventory/test_stock.py", "tests/inventory/test_orders.py"),
    *("tests/planner/test_queue.py", "tests/planner/plain_data"),
]
FEWER = "6"  # random tries there: all of them are made on SQLite in the same run


def run_on_postgresql(paths, **told):
    url = os.environ.get("POSTGRES_URL")
    need(url, "a PostgreSQL server (its address in POSTGRES_URL)")
    command = [sys.executable, "-m", "pytest", "-p", "no:cacheprovider", *paths]
    command += ["-m", "django_db and not browser and not office and not long"]
    done = subprocess.run(
        command,
        cwd=ROOT,
        env={**os.environ, **told, "DATABASE_URL": url},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout[-6000:] + done.stderr[-2000:]
    assert " passed" in done.stdout


@pytest.mark.postgres
def test_acts_balances_proofs_and_the_queue_hold_on_postgresql_as_on_sqlite():
    run_on_postgresql(WHERE_THEY_MAY_DIFFER, EXAMPLES=FEWER)


@pytest.mark.long
@pytest.mark.postgres
def test_all_that_uses_the_database_holds_on_postgresql_as_on_sqlite():
    run_on_postgresql(FOLDERS)
