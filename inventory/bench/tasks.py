"""What is measured of the books, each in a process of its own on books of its own in a folder.

Takes the folder; gives plain numbers. Knows no Django: a child sets it up with DATA_DIR pointing at the folder.
"""

import json
import os
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent.parent
CODE = "import django; django.setup(); from inventory.bench.measures import answer; answer()"
NOT_OURS = ("DATABASE_URL", "DEBUG", "SECRET_KEY")


def fill_books(*, folder, movements, yards, colonies, parts):
    """Empty books filled with so many movements."""
    size = {"movements": movements, "yards": yards, "colonies": colonies, "parts": parts}
    return _asked(folder, "fill_books", **size)


def stock_by_place(*, folder):
    """Seconds of today's stock by place and of the slowest past day."""
    return _asked(folder, "stock_by_place")


def yard_page(*, folder):
    """The most questions to the database any yard's page takes."""
    return _asked(folder, "yard_page")


def posting(*, folder):
    """Median seconds of an act of today and of one told late."""
    return _asked(folder, "posting")


def writers(*, folder):
    """Eight people at once, as processes and as threads: what was lost, how long the longest act took."""
    return _asked(folder, "writers")


def check_books(*, folder):
    """Seconds and memory of the proof, and the faults it found."""
    return _asked(folder, "check_books")


def there_and_back(*, folder, rows):
    """Seconds and memory of a large sheet written and read back."""
    return _asked(folder, "there_and_back", rows=rows)


def _asked(folder, what, **settings):
    kept = {name: value for name, value in os.environ.items() if name not in NOT_OURS}
    done = subprocess.run(
        [sys.executable, "-c", CODE, what, json.dumps(settings)],
        cwd=ROOT,
        env={**kept, "DATA_DIR": str(folder), "DJANGO_SETTINGS_MODULE": "apiary.settings"},
        stdout=subprocess.PIPE,
        check=True,
    )
    return json.loads(done.stdout)
