"""A command on a machine that never ran the program before: the tables are there by the time it looks."""

import os
import subprocess
import sys
from pathlib import Path

import pytest
from django.db import connection
from django.db.migrations.recorder import MigrationRecorder

from apiary.management.books_command import are_newer_than, bring_up_to_date, changes_known

ROOT = Path(__file__).resolve().parents[3]


@pytest.mark.django_db
def test_nothing_is_done_where_the_tables_are_up_to_date():
    assert bring_up_to_date() is False


@pytest.mark.django_db
def test_books_that_went_through_an_unknown_change_are_newer():
    known = changes_known()
    assert not are_newer_than(known)
    assert are_newer_than(known - {("planner", "0001_initial")})
    MigrationRecorder(connection).record_applied("another program", "0007_of_its_own")
    assert not are_newer_than(known)


def told(folder, *words):
    """Exit code and text of a command on a data folder of its own."""
    env = {name: value for name, value in os.environ.items() if name != "DATABASE_URL"}
    line = [sys.executable, str(ROOT / "manage.py"), *words]
    done = subprocess.run(
        line, cwd=folder, env={**env, "DATA_DIR": str(folder)}, capture_output=True, text=True, check=False
    )
    assert "Traceback" not in done.stderr
    return done.returncode, done.stdout + done.stderr


def test_a_new_machine_s_first_commands_answer_in_sentences(tmp_path):
    assert told(tmp_path, "load_sheet", "--template", "gear.xlsx") == (
        0,
        "gear.xlsx is ready to fill in. Its first sheet says how.\n",
    )
    code, text = told(tmp_path, "plan_season")
    assert code == 2 and text
    code, text = told(tmp_path, "check_books")
    assert (code, "0 movements" in text) == (0, True)
