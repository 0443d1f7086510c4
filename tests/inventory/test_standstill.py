"""A standstill: what is written meanwhile is not seen, and who writes is not held up."""

import os
import subprocess
import sys
import threading
from pathlib import Path

import pytest
from django.db import connection, transaction

from inventory.models import BookSeal
from inventory.standstill import standing_still

ROOT = Path(__file__).resolve().parent.parent.parent
BESIDE = """
import django; django.setup()
from django.core.management import call_command
from django.db import connection
from tests.inventory.test_standstill import write_meanwhile
call_command("migrate", verbosity=0)
write_meanwhile()
print(connection.transaction_mode)
"""


def write_meanwhile():
    """Somebody else writes and is done while the books stand still."""
    BookSeal.objects.create(pk=1, length=1)
    with standing_still():
        assert BookSeal.objects.get().length == 1
        writer = threading.Thread(target=_write)
        writer.start()
        writer.join(10)
        assert not writer.is_alive()
        assert BookSeal.objects.get().length == 1
    assert BookSeal.objects.get().length == 2


def _write():
    with transaction.atomic():
        BookSeal.objects.update(length=2)
    connection.close()


def test_inside_a_transaction_that_one_is_used(db):
    with standing_still():
        assert not BookSeal.objects.exists()
    BookSeal.objects.create(pk=1)


@pytest.mark.django_db(transaction=True)
def test_a_writer_is_neither_held_up_nor_seen(tmp_path):
    """On SQLite in a process of its own, as tests keep it in memory; there the usual way of beginning comes back."""
    if connection.vendor == "postgresql":
        write_meanwhile()
        return
    kept = {name: value for name, value in os.environ.items() if name != "DATABASE_URL"}
    done = subprocess.run(
        [sys.executable, "-c", BESIDE],
        cwd=ROOT,
        env={**kept, "DATA_DIR": str(tmp_path), "DJANGO_SETTINGS_MODULE": "apiary.settings"},
        capture_output=True,
        text=True,
        timeout=120,
        check=False,
    )
    assert (done.stdout.strip(), done.returncode) == ("IMMEDIATE", 0), done.stderr
