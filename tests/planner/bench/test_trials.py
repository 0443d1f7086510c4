"""Order quality: the worst of the seeds is told, and what cannot be said is not."""

import pytest

from apiary.bench.measuring import Stopwatch
from planner.bench import trials
from planner.bench.instances import Size
from planner.bench.runner import Runner
from planner.bench.scales import QUICK, Scale
from planner.bench.tasks import Instance
from planner.solution.plans import no_plan

SCALE = Scale(trial_seeds=(1, 2))
GOOD = {
    "done": True,
    "seasons": 1000,
    "ours": 1120.0,
    "rule": 1000.0,
    "nothing": 900.0,
    "over_mean_low": 5.0,
    "gap": 0.001,
}


def figures(answer, scale=SCALE):
    said = []
    runner = Runner(
        scale=scale,
        catalogue={},
        market={},
        tell=said.append,
        run=lambda task, settings, seconds: answer(settings["instance"]),
        stopwatch=Stopwatch(),
    )
    return list(trials.order_quality(runner)), said


def test_each_size_tells_gain_what_it_adds_and_the_gap_and_large_ones_the_mean_season():
    found, _ = figures(lambda instance: GOOD)
    demo = [figure for figure in found if figure.figure.startswith("8 yards")]
    assert [(f.value, f.target) for f in demo] == [
        (pytest.approx(0.12), ">= 0.09"),
        (pytest.approx(2.2), ">= 1.9"),
        (0.001, "<= 0.004"),
    ]
    medium = [figure for figure in found if figure.figure.startswith("12 yards")]
    assert [f.target for f in medium] == [">= 0.09", ">= 1.9", "> 0", "<= 0.0015"]
    assert len(found) == 3 + 3 + 4 + 4


def test_the_worst_seed_counts():
    worse = {**GOOD, "ours": 1050.0, "over_mean_low": -2.0, "gap": 0.002}
    found, _ = figures(lambda instance: worse if instance.seed == 2 else GOOD)
    medium = [figure for figure in found if figure.figure.startswith("12 yards")]
    assert [f.value for f in medium] == [pytest.approx(0.05), pytest.approx(1.5), -2.0, 0.002]
    assert not any(f.is_met for f in medium)
    assert "worst of 2 seeds" in medium[0].figure


def test_an_order_not_proven_in_time_is_said_and_not_tried():
    found, said = figures(lambda instance: {"done": False})
    assert found == []
    assert said[0] == "left out, no order was proven in time: trial of 8 yards, 110 colonies, seed 1"


def test_what_the_trial_left_out_gives_no_figure():
    bare = {**GOOD, "rule": None, "gap": None, "over_mean_low": None}
    assert figures(lambda instance: bare)[0] == []


def test_a_rule_that_adds_nothing_gives_no_multiple_of_it():
    found, _ = figures(lambda instance: {**GOOD, "nothing": 1000.0})
    assert not any("adds over buying nothing" in figure.figure for figure in found)


def test_quick_tries_only_the_size_of_the_demo():
    found, _ = figures(lambda instance: GOOD, QUICK)
    assert {figure.figure.partition(",")[0] for figure in found} == {"8 yards"}


@pytest.mark.parametrize(("scale", "asked"), [(SCALE, (100, 1200.0)), (QUICK, (None, None))])
def test_long_runs_draw_batches_of_their_own_in_a_longer_time(scale, asked):
    found = []
    runner = Runner(
        scale=scale,
        catalogue={},
        market={},
        tell=print,
        run=lambda task, settings, seconds: found.append(settings) or GOOD,
        stopwatch=Stopwatch(),
    )
    list(trials.order_quality(runner))
    seasons, seconds = asked
    assert found[0].get("batch_seasons") == seasons
    assert found[0]["seconds"] == (seconds or scale.run_seconds)


def test_a_trial_tells_numbers_of_an_operation_planned_and_tried(catalogue, market):
    instance = Instance(catalogue=catalogue, market=market, size=Size(yards=1, colonies=8), scenarios=4)
    found = trials.trial(instance=instance, fresh=40, seconds=60, batches=2, batch_seasons=5)
    assert found["done"] and found["seasons"] == 40
    assert found["ours"] > found["nothing"]
    assert found["gap"] >= 0 and isinstance(found["over_mean_low"], float)


def test_a_trial_without_a_proven_order_says_so(catalogue, market, monkeypatch):
    monkeypatch.setattr(
        trials, "solve", lambda problem, **settings: no_plan("time_limit", "no time", 1, "highs")
    )
    instance = Instance(catalogue=catalogue, market=market, size=Size(yards=1, colonies=8), scenarios=2)
    assert trials.trial(instance=instance, fresh=10, seconds=60) == {"done": False}
