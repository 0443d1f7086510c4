"""The rows: which figures come of which measurements, and which are left out where a measurement is missing."""

import pytest

from planner.bench import rows
from planner.bench.measuring import Stopwatch
from planner.bench.runner import QUICK, Runner, Scale

LONG = Scale(repeats=1, seeds=(1,), trial_seeds=(1,))


def made(found, scale=LONG):
    """A runner whose tasks give what `found` has under their name: a dict, None, or a function of the settings."""

    def run(task, settings, seconds):
        answer = found.get(task.__name__)
        return answer(settings) if callable(answer) else answer

    return Runner(
        scale=scale, catalogue={}, market={}, tell=lambda text: None, run=run, stopwatch=Stopwatch()
    )


def figures(row, found, scale=LONG):
    return [(figure.value, figure.target, figure.figure) for figure in row(made(found, scale))]


def spent(seconds, done=True):
    return {"seconds": seconds, "done": done}


def test_against_the_naive_form_sizes_and_times_are_ratios():
    found = figures(
        rows.against_naive,
        {
            "pooled_size": {"variables": 100, "rows": 50},
            "naive_sizes": {"variables": 20000, "rows": 9000, "lean": 8000},
            "product": spent(2.0),
            "naive": lambda settings: spent(140.0 if settings["solver"] == "cbc" else 90.0),
        },
    )
    assert [row[:2] for row in found] == [(200, ">= 100"), (70, ">= 60"), (45, ">= 40"), (45, ">= 200")]
    assert "20,000 × 9,000 against 100 × 50" in found[0][2]


def test_a_naive_run_that_was_stopped_gives_a_ratio_that_says_it_is_a_lower_bound():
    found = figures(rows.against_naive, {"product": spent(2.0), "naive": spent(1800.0, done=False)})
    assert {row[0] for row in found} == {900}
    assert all("at least: the naive form was stopped after 1800 s" in row[2] for row in found)


def test_without_a_proven_order_of_ours_no_ratio_is_printed():
    assert figures(rows.against_naive, {"product": spent(2.0, done=False), "naive": spent(90.0)}) == []


def test_forms_are_compared_by_their_relative_difference():
    found = figures(
        rows.yard_form,
        {
            "linear_forms": {"naive": 1000.0, "yard": 999.0, "free_naive": 1100.0, "free_yard": 1100.0},
            "pooled_order_in_naive": {"held": 995.0, "bound": 1000.0},
        },
    )
    assert [row[:2] for row in found] == [
        (pytest.approx(0.001), "<= 0.0015"),
        (0, "<= 1e-6"),
        (pytest.approx(0.005), "<= 0.005"),
    ]


def test_forms_not_solved_in_time_are_not_compared():
    missing = {
        "linear_forms": {"naive": None, "yard": 1.0},
        "pooled_order_in_naive": {"held": 1, "bound": None},
    }
    assert figures(rows.yard_form, missing) == []


def test_growth_by_yards_is_of_columns_and_of_time_a_scenario():
    found = figures(
        rows.growth_by_yards,
        {
            "pooled_size": lambda s: {"variables": 10 if s["instance"].size.yards == 6 else 12},
            "product": lambda s: spent(1.0 if s["instance"].size.yards == 6 else 1.4),
        },
    )
    assert [row[:2] for row in found] == [
        (pytest.approx(1.2), "<= 1.25"),
        (pytest.approx(1.4), "<= 1.5"),
    ]


def test_growth_by_scenarios_is_of_time_at_two_sizes():
    found = figures(rows.growth_by_scenarios, {"product": lambda s: spent(s["instance"].scenarios / 100.0)})
    assert [row[:2] for row in found] == [(10, "<= 9"), (10, "<= 9")]
    assert "12 yards" in found[0][2] and "40 yards" in found[1][2]


@pytest.fixture
def two_ways(monkeypatch):
    def solve(problem, *, way="auto"):
        raise AssertionError("never called here")

    monkeypatch.setattr(rows, "solve", solve)


def test_two_phases_are_set_against_the_faster_direct_solver(two_ways):
    def product(settings):
        if settings["way"] == "two-phase":
            return spent(2.0)
        return spent(20.0 if settings["solver"] == "cbc" else 30.0)

    found = figures(rows.two_phase, {"product": product})
    assert [row[:2] for row in found] == [(10, ">= 4"), (10, ">= 8"), (10, ">= 5")]


def test_direct_solves_that_did_not_end_give_a_lower_bound_that_says_so(two_ways):
    def product(settings):
        return spent(2.0) if settings["way"] == "two-phase" else spent(900.0, done=False)

    found = figures(rows.two_phase, {"product": product})
    assert {row[0] for row in found} == {450}
    assert all("at least: no direct solve ended within 900 s" in row[2] for row in found)


def test_without_a_second_way_of_solving_there_is_no_such_row(monkeypatch):
    monkeypatch.setattr(rows, "solve", lambda problem: None)
    assert figures(rows.two_phase, {"product": spent(1.0)}) == []


def test_building_is_set_against_the_plain_way():
    row = {"product": 1.0, "plain": 1.5, "product_rows": 0.5, "plain_rows": 1.25}
    found = figures(rows.by_dicts, {"building": row})
    assert [row[:2] for row in found] == [(2.5, ">= 2"), (1.5, ">= 2")]


def test_quick_rows_leave_out_what_takes_long():
    everything = {"product": spent(1.0), "naive": spent(9.0)}
    assert figures(rows.against_naive, everything, QUICK) == []
    assert figures(rows.growth_by_scenarios, everything, QUICK) == []


@pytest.mark.parametrize("name", rows.ROWS)
def test_a_row_whose_measurements_did_not_end_prints_nothing(name):
    assert figures(rows.ROWS[name], {}) == []
