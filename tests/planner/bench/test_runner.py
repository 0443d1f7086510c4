"""The runner: repeats and seeds, what is left out and said, time that is up."""

import pytest

from planner.bench.instances import Size
from planner.bench.measuring import Overtime, Stopwatch
from planner.bench.runner import FULL, QUICK, Runner, Scale

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
    assert made.growth(product, *makers, of=lambda row: row["seconds"]) == 3.5
    assert said[-1] == "only 2 of 3 seeds ended: product"


def test_the_full_scale_is_that_of_the_targets_and_the_quick_one_ends_within_five_minutes():
    sizes = [(s.yards, s.colonies) for s in (FULL.small, FULL.medium, FULL.large, FULL.wide)]
    assert sizes == [(6, 90), (12, 300), (40, 1000), (40, 600)]
    assert (FULL.few, FULL.several, FULL.repeats, len(FULL.seeds), FULL.fresh) == (20, 300, 3, 5, 1000)
    assert QUICK.total_seconds + QUICK.run_seconds / 2 < 300 and QUICK.run_seconds < 60
