"""The rows of the bench on the books: how questions, acts and the proof fare from a thousand movements to a million,
and how fast a large sheet goes out and comes back.

Takes what keeps the time; gives Figures as they are found. Fills books of its own in a folder that is removed.
"""

import tempfile
from functools import partial
from pathlib import Path

from apiary.bench.figures import Figure
from inventory.bench import tasks

MILLION, HUNDRED_THOUSAND, TEN_THOUSAND, THOUSAND = 1_000_000, 100_000, 10_000, 1_000
OUTFIT = {"yards": 60, "colonies": 2000, "parts": 80}
SHEET_ROWS = 50_000
FILLING_SECONDS = 600  # of a million on a slow machine


def books(keeper):
    """Sixty yards, two thousand colonies and eighty parts, at three lengths of the books."""
    large = MILLION if keeper.long_runs else HUNDRED_THOUSAND
    with tempfile.TemporaryDirectory() as root:
        folders = {count: Path(root) / str(count) for count in (THOUSAND, TEN_THOUSAND, large)}
        for count, folder in folders.items():
            folder.mkdir()
            seconds = FILLING_SECONDS if keeper.long_runs else None
            if not keeper.result(tasks.fill_books, folder=folder, movements=count, seconds=seconds, **OUTFIT):
                return
        for row in (_stock, _page, _posting, _writers, _proof):
            yield from row(keeper, folders, large)


def _stock(keeper, folders, large):
    few, many = (keeper.result(tasks.stock_by_place, folder=folders[n]) for n in (TEN_THOUSAND, large))
    if not many:
        return
    make = partial(Figure, bench="books")
    name = f"{large:,} movements: stock by place ({many['rows']:,} rows)"
    for key, when in (("today", "today"), ("past", "the slowest of 24 past days")):
        what = f"{name}, {when}, quickest of five ({1000 * many[f'{key}_cpu']:.3g} ms of the processor)"
        yield make(figure=what, value=1000 * many[key], unit="ms", target="<= 50")
        if few:
            what = f"the same, {when}, against {TEN_THOUSAND:,} movements ({few['rows']:,} rows)"
            yield make(figure=what, value=many[key] / few[key], unit="times", target="<= 10")


def _page(keeper, folders, large):
    found = [keeper.result(tasks.yard_page, folder=folders[count]) for count in (THOUSAND, large)]
    if all(found):
        few, many = (one["queries"] for one in found)
        what = f"{large:,} movements: questions to the database of a yard's page ({few} at {THOUSAND:,})"
        yield Figure(bench="books", figure=what, value=many, unit="queries", target="<= 15")


def _posting(keeper, folders, large):
    few, many = (keeper.result(tasks.posting, folder=folders[count]) for count in (THOUSAND, large))
    if not (few and many):
        return
    for key, when in (("today", "of today"), ("late", "told three days late")):
        spent = f"median {1000 * many[key]:.3g} ms to {1000 * few[key]:.3g}"
        what = f"{large:,} movements: posting an act {when} against {THOUSAND:,} ({spent})"
        yield Figure(bench="books", figure=what, value=many[key] / few[key], unit="times", target="<= 1.5")


def _writers(keeper, folders, large):
    found = keeper.result(tasks.writers, folder=folders[large])
    if found:
        name = f"{large:,} movements: eight writers at once, {found['acts']} acts"
        make = partial(Figure, bench="books")
        yield make(figure=f"{name}: rows lost or twice", value=found["lost"], unit="rows", target="<= 0")
        for how, where in (
            ("processes", "each in a process of its own"),
            ("threads", "threads of one process"),
        ):
            what = f"{name}, {where}: the longest (median {1000 * found[how]['median']:.3g} ms)"
            yield make(figure=what, value=found[how]["longest"], unit="s", target="< 1")


def _proof(keeper, folders, large):
    found = keeper.result(tasks.check_books, folder=folders[large])
    if found:
        make = partial(Figure, bench="books")
        spent = f"{found['cpu']:.3g} s of the processor, {found['megabytes']:.0f} MB"
        what = f"{large:,} movements: check_books ({spent})"
        yield make(figure=what, value=found["seconds"], unit="s", target="<= 60")
        what = f"{large:,} movements: faults it found after all that was written"
        yield make(figure=what, value=found["faults"], unit="faults", target="<= 0")


def sheets(keeper):
    """Opening stock of fifty thousand rows, as a workbook and back."""
    with tempfile.TemporaryDirectory() as folder:
        found = keeper.result(tasks.there_and_back, folder=Path(folder), rows=SHEET_ROWS)
    if not found:
        return
    make = partial(Figure, bench="sheets")
    for key, what in (("write", "written"), ("read", "read back")):
        spent = f"{found[f'{key}_cpu']:.3g} s of the processor"
        yield make(
            figure=f"{SHEET_ROWS:,} rows of gear {what} ({spent})", value=found[key], unit="s", target="<= 4"
        )
    what = f"{SHEET_ROWS:,} rows of gear: memory of both ways"
    yield make(figure=what, value=found["megabytes"], unit="MB", target="<= 300")
    yield make(figure=f"{SHEET_ROWS:,} rows of gear: lost", value=found["lost"], unit="rows", target="<= 0")


ROWS = {"books": books, "sheets": sheets}
