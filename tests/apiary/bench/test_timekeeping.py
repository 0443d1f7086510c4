"""The time of measurements: what ended is given, what did not is said, and no row takes another's time."""

import pytest

from apiary.bench.measuring import Overtime, Stopwatch
from apiary.bench.timekeeping import Timekeeper


def counting(*, movements):
    raise AssertionError("the tests give their own results")


def hurrying(*, movements, seconds):
    raise AssertionError("the tests give their own results")


def overtime(task, settings, seconds):
    raise Overtime


@pytest.fixture
def said():
    return []


def keeper(said, run, **settings):
    return Timekeeper(tell=said.append, run=run, **settings)


def test_what_a_task_found_is_given(said):
    made = keeper(said, lambda task, settings, seconds: {"of": settings["movements"], "within": seconds})
    assert made.result(counting, movements=7, seconds=20) == {"of": 7, "within": 35}
    assert said == []


def test_a_task_that_asks_for_its_time_is_told_it(said):
    made = keeper(said, lambda task, settings, seconds: settings)
    assert made.result(hurrying, movements=7, seconds=20) == {"movements": 7, "seconds": 20}


def test_a_task_that_did_not_end_or_died_is_said_in_words(said):
    assert keeper(said, overtime).result(counting, movements=7, seconds=20) is None
    assert keeper(said, lambda *_, **__: None).result(counting, movements=7) is None
    assert said == [
        "left out, it did not end within 20 s: counting, movements 7",
        "left out, its process died: counting, movements 7",
    ]


def test_a_task_stopped_may_give_the_seconds_it_had(said):
    found = keeper(said, overtime).result(counting, movements=7, seconds=20, or_stopped=True)
    assert found == {"seconds": 20, "done": False}


def test_once_the_time_is_up_nothing_is_begun(said):
    made = keeper(said, overtime, stopwatch=Stopwatch(0.0))
    assert made.result(counting, movements=7) is None
    assert said == ["left out, the time is up: counting, movements 7"]


def test_a_row_has_its_share_of_the_time_left(said):
    made = keeper(said, overtime, stopwatch=Stopwatch(100.0))
    made.begin_row(4)
    assert 37 < made.left() <= 37.5
    made = keeper(said, overtime)
    made.begin_row(4)
    assert made.left() == float("inf")
