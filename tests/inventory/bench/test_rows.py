"""The figures of the books, from results told instead of measured."""

import pytest

from apiary.bench.timekeeping import Timekeeper
from inventory.bench.rows import ROWS

TOLD = {
    "fill_books": {"seconds": 1.0, "holdings": 9},
    "stock_by_place": {"today": 0.02, "today_cpu": 0.02, "past": 0.04, "past_cpu": 0.03, "rows": 7},
    "yard_page": {"queries": 14},
    "posting": {"today": 0.01, "today_cpu": 0.01, "late": 0.02, "late_cpu": 0.02},
    "writers": {
        "lost": 0,
        "acts": 400,
        "processes": {"longest": 0.5, "median": 0.1},
        "threads": {"longest": 0.25, "median": 0.1},
    },
    "check_books": {"seconds": 30.0, "cpu": 25.0, "megabytes": 100.0, "faults": 0},
}


def figures(told, *, long_runs=True):
    asked = []

    def run(task, settings, seconds):
        asked.append((task.__name__, settings.get("movements")))
        return told.get(task.__name__)

    keeper = Timekeeper(tell=lambda text: None, run=run, long_runs=long_runs)
    return list(ROWS["books"](keeper)), asked


def test_every_target_has_its_figure():
    found, asked = figures(TOLD)
    assert [(figure.value, figure.unit, figure.target) for figure in found] == [
        (20.0, "ms", "<= 50"),
        (1.0, "times", "<= 10"),
        (40.0, "ms", "<= 50"),
        (1.0, "times", "<= 10"),
        (14, "queries", "<= 15"),
        (1.0, "times", "<= 1.5"),
        (1.0, "times", "<= 1.5"),
        (0, "rows", "<= 0"),
        (0.5, "s", "< 1"),
        (0.25, "s", "< 1"),
        (30.0, "s", "<= 60"),
        (0, "faults", "<= 0"),
    ]
    assert all(figure.is_met and figure.bench == "books" for figure in found)
    assert [count for name, count in asked if name == "fill_books"] == [1_000, 10_000, 1_000_000]


def test_the_quick_bench_fills_a_hundred_thousand():
    found, asked = figures(TOLD, long_runs=False)
    assert ("fill_books", 100_000) in asked and ("fill_books", 1_000_000) not in asked
    assert all("100,000 movements" in f.figure or "the same" in f.figure for f in found)


@pytest.mark.parametrize(
    ("missing", "left"),
    [
        ("fill_books", 0),
        ("stock_by_place", 8),
        ("yard_page", 11),
        ("posting", 10),
        ("writers", 9),
        ("check_books", 10),
    ],
)
def test_what_could_not_be_measured_gives_no_figure(missing, left):
    told = {name: found for name, found in TOLD.items() if name != missing}
    assert len(figures(told)[0]) == left


SENT = {"write": 3.0, "write_cpu": 2.9, "read": 1.5, "read_cpu": 1.4, "megabytes": 200.0, "lost": 0}


@pytest.mark.parametrize("found, values", [(SENT, [3.0, 1.5, 200.0, 0]), (None, [])])
def test_a_sheet_of_fifty_thousand_rows_has_its_figures(found, values):
    keeper = Timekeeper(tell=lambda text: None, run=lambda task, settings, seconds: found, long_runs=False)
    told = list(ROWS["sheets"](keeper))
    assert [figure.value for figure in told] == values
    assert all(figure.is_met and figure.bench == "sheets" for figure in told)
