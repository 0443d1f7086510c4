"""The runner: repeats and seeds, what is left out and said, time that is up."""

import pytest

from apiary.bench.measuring import Overtime, Stopwatch
from planner.bench.instances import Size
from planner.bench.runner import Growth, Runner
from planner.bench.scales import Scale

TINY = Scale(repeats=3, seeds=(1, 2, 3), run_seconds=9.0)


def product(*, instance, seconds, way=None):
    raise AssertionError("the tests give their own results")


def pooled_size(*, instance):
    raise AssertionError("the tests give their own results")


def overtime(task, settings, seconds):
    raise Overtime


@pytest.fixture
def runner():
    """Makes a runner whose tasks give what `found` says of their settings."""

    def make(found, scale=TINY, **settings):
        said = []
        made = Runner(
            scale=scale,
            catalogue={},
            market={},
            tell=said.append,
            run=lambda task, settings, seconds: found(task, settings, seconds),
            **settings,
        )
        return made, said

    return make


def test_seconds_are_the_median_of_the_repeats_and_asked_for_once(runner):
    spent = iter([3.0, 1.0, 2.0])
    made, said = runner(lambda *_: {"seconds": next(spent), "done": True})
    instance = made.instance(Size(yards=1, colonies=6), 5)
    assert made.seconds(product, instance=instance) == 2.0
    assert made.seconds(product, instance=instance) == 2.0
    assert said == []


def test_a_run_that_proved_nothing_counts_for_nothing_and_is_said(runner):
    made, said = runner(lambda *_: {"seconds": 9.0, "done": False})
    assert made.seconds(product, instance=made.instance(Size(yards=1, colonies=6), 5)) is None
    assert said == ["left out, not proven in 9 s: product of 1 yards, 6 colonies, 5 scenarios, seed 1"]


def test_a_run_that_did_not_end_is_said_with_its_way(runner):
    made, said = runner(overtime)
    instance = made.instance(Size(yards=1, colonies=6), 5)
    assert made.result(product, instance=instance, way="two-phase") is None
    assert said == [
        "left out, it did not end within 9 s: product of 1 yards, 6 colonies, 5 scenarios, seed 1, way two-phase"
    ]


def test_a_run_that_did_not_end_can_tell_the_seconds_it_had(runner):
    made, said = runner(overtime)
    assert made.result(product, instance=None, or_stopped=True) == {"seconds": 9.0, "done": False}
    assert said == []


def test_a_run_that_died_is_said_and_never_taken_for_a_long_one(runner):
    made, said = runner(lambda *_: None)
    assert made.result(product, instance=None, or_stopped=True) is None
    assert said == ["left out, its process died: product"]


def test_only_tasks_that_know_a_limit_are_given_one(runner):
    seen = []
    made, _ = runner(lambda task, settings, seconds: seen.append((task.__name__, settings.get("seconds"))))
    for task in (product, pooled_size):
        made.result(task, instance=None)
    assert seen == [("product", 9.0), ("pooled_size", None)]


def test_nothing_is_begun_once_the_time_is_up(runner):
    made, said = runner(lambda *_: pytest.fail("begun all the same"), stopwatch=Stopwatch(0.5))
    assert made.result(product, instance=None) is None
    assert said == ["left out, the time is up: product"]


def test_growth_is_the_median_ratio_over_the_seeds_that_ended(runner):
    grown = {1: 2.0, 2: 5.0}

    def found(task, settings, seconds):
        instance = settings["instance"]
        if instance.seed == 3:
            return None
        return {"seconds": grown[instance.seed] if instance.scenarios == 10 else 1.0, "done": True}

    made, said = runner(found)
    makers = [lambda seed, n=n: made.instance(Size(yards=1, colonies=6), n, seed) for n in (1, 10)]
    assert made.growth(product, *makers, of=lambda row: row["seconds"]) == Growth(
        ratio=3.5, before=1.0, after=3.5, seeds=2
    )
    assert said[-1] == "only 2 of 3 seeds ended: product"


def test_growth_tells_its_seeds_and_the_figures_it_is_of():
    grown = Growth(ratio=3.5, before=1.25, after=4.375, seeds=5)
    assert grown.words(" s") == "median of 5 seeds, 1.25 to 4.38 s"
    assert Growth(ratio=2.0, before=10, after=20, seeds=1).words("") == "one seed, 10 to 20"


def test_an_opponent_is_given_what_is_enough_and_asked_once_more_only_if_it_ends(runner):
    allowed = []

    def found(task, settings, seconds):
        allowed.append(settings["seconds"])
        return {"seconds": settings["seconds"], "done": False}

    made, _ = runner(found)
    opponent = made.opponent(product, enough=40.0, instance=None)
    assert (opponent.seconds, opponent.stopped, allowed) == (40.0, True, [40.0])


def test_an_opponent_that_ends_is_told_by_the_median_of_the_repeats(runner):
    spent = iter([3.0, 1.0, 2.0])
    made, _ = runner(lambda *_: {"seconds": next(spent), "done": True})
    opponent = made.opponent(product, enough=40.0, instance=None)
    assert (opponent.seconds, opponent.stopped) == (2.0, False)


def test_an_opponent_stopped_in_a_later_repeat_counts_as_its_longest(runner):
    answers = iter([(30.0, True), (40.0, False), (40.0, False)])

    def found(*_):
        seconds, done = next(answers)
        return {"seconds": seconds, "done": done}

    made, _ = runner(found)
    opponent = made.opponent(product, enough=40.0, instance=None)
    assert (opponent.seconds, opponent.stopped) == (40.0, True)


def test_an_opponent_killed_took_what_it_was_given(runner):
    made, _ = runner(overtime)
    opponent = made.opponent(product, enough=40.0, instance=None)
    assert (opponent.seconds, opponent.stopped) == (40.0, True)


def test_a_row_has_its_share_of_the_time_and_leaves_the_rest_to_later_ones(runner):
    made, _ = runner(lambda *_: None, stopwatch=Stopwatch(100.0))
    made.begin_row(4)
    assert 37 < made.left() <= 37.5
    made.begin_row(1)
    assert 99 < made.left() <= 100


def test_without_an_end_a_row_has_all_the_time(runner):
    made, _ = runner(lambda *_: None)
    made.begin_row(4)
    assert made.left() == float("inf")


def test_no_run_goes_on_past_its_rows_time(runner):
    given = []
    made, _ = runner(
        lambda task, settings, seconds: given.append((settings["seconds"], seconds)),
        scale=Scale(run_seconds=50.0),
        stopwatch=Stopwatch(40.0),
    )
    made.begin_row(2)
    made.result(product, instance=made.instance(Size(yards=1, colonies=6), 100))
    ((own, whole),) = given
    assert 23 < own <= 24 and 29 < whole <= 30


def test_a_run_killed_for_want_of_time_took_what_was_left_after_working_out_its_seasons(runner):
    made, said = runner(overtime, scale=Scale(run_seconds=50.0), stopwatch=Stopwatch(40.0))
    found = made.result(product, instance=None, or_stopped=True)
    assert 24 < found["seconds"] <= 25 and found["done"] is False
    made, said = runner(overtime, scale=Scale(run_seconds=50.0), stopwatch=Stopwatch(10.0))
    assert made.result(product, instance=None, or_stopped=True) is None
    assert "did not end within 8 s" in said[0]
