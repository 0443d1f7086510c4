"""How long all of the books take out as plain files and back into an empty installation, and how much memory.

Takes what keeps the time; gives Figures. Books of its own lie in a folder that is removed; each command is a process.
"""

import os
import resource
import subprocess
import sys
import tempfile
import time
from functools import partial
from pathlib import Path

from apiary.bench.figures import Figure
from inventory.bench.rows import HUNDRED_THOUSAND, OUTFIT
from inventory.bench.tasks import NOT_OURS, ROOT, fill_books

BENCH = "plain-data"


def plain_data(keeper):
    """Sixty yards, two thousand colonies, a hundred thousand movements: out, back in and out again."""
    with tempfile.TemporaryDirectory() as folder:
        found = keeper.result(out_and_in, folder=Path(folder), movements=HUNDRED_THOUSAND, **OUTFIT)
    if not found:
        return
    make = partial(Figure, bench=BENCH)
    name = f"{HUNDRED_THOUSAND:,} movements, {found['megabytes_of_files']:.0f} MB of files"
    for key, command, target in (("out", "export_all", "<= 30"), ("back", "load_all, proven", "<= 60")):
        words = f"{name}: {command} ({found[f'{key}_cpu']:.3g} s of the processor)"
        yield make(figure=words, value=found[key], unit="s", target=target)
    yield make(figure=f"{name}: memory at most", value=found["megabytes"], unit="MB", target="<= 300")
    what = f"{name}: files that differ after a way out and in"
    yield make(figure=what, value=found["differ"], unit="files", target="<= 0")


def out_and_in(*, folder, **size):
    """Seconds and memory of both commands, and how many files differ when written again."""
    old, new, first, second = (folder / name for name in ("old", "new", "first", "second"))
    old.mkdir(), new.mkdir()
    fill_books(folder=old, **size)
    out, out_cpu = _command(old, "export_all", first)
    back, back_cpu = _command(new, "load_all", first)
    _command(new, "export_all", second)
    files = [path.relative_to(first) for path in first.rglob("*") if path.is_file()]
    return {
        "out": out,
        "out_cpu": out_cpu,
        "back": back,
        "back_cpu": back_cpu,
        "megabytes": resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024,
        "megabytes_of_files": sum((first / name).stat().st_size for name in files) / 2**20,
        "differ": sum((first / name).read_bytes() != _bytes(second / name) for name in files),
    }


def _bytes(path):
    return path.read_bytes() if path.exists() else None


def _command(data, *words):
    """(seconds of the clock, of the processor) of a command on the books in a folder."""
    kept = {name: value for name, value in os.environ.items() if name not in NOT_OURS}
    before, began = _processor(), time.perf_counter()
    subprocess.run(
        [sys.executable, str(ROOT / "manage.py"), *map(str, words)],
        env={**kept, "DATA_DIR": str(data)},
        stdout=subprocess.DEVNULL,
        check=True,
    )
    return time.perf_counter() - began, _processor() - before


def _processor():
    spent = resource.getrusage(resource.RUSAGE_CHILDREN)
    return spent.ru_utime + spent.ru_stime
