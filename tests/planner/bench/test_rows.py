"""The rows: which figures come of which measurements, and which are left out where a measurement is missing."""

import pytest

from planner.bench import rows
from planner.bench.scales import QUICK
from tests.planner.bench.told import figures, spent


def test_growth_by_yards_is_of_columns_and_of_time_a_scenario():
    found = figures(
        rows.growth_by_yards,
        {
            "solved_size": lambda s: {"variables": 8 if s["instance"].size.yards == 6 else 9, "done": True},
            "pooled_size": lambda s: {"variables": 10 if s["instance"].size.yards == 6 else 20},
            "product": lambda s: spent(1.0 if s["instance"].size.yards == 6 else 1.4),
        },
    )
    assert [row[:2] for row in found] == [
        (pytest.approx(1.125), "<= 1.25"),
        (pytest.approx(2.0), "<= 1.25"),
        (pytest.approx(1.4), "<= 1.5"),
    ]


def test_growth_by_scenarios_is_of_time_at_two_sizes():
    found = figures(rows.growth_by_scenarios, {"product": lambda s: spent(s["instance"].scenarios / 100.0)})
    assert [row[:2] for row in found] == [(10, "<= 9"), (10, "<= 9")]
    assert "12 yards" in found[0][2] and "40 yards" in found[1][2]
    assert "one seed, 1 to 10 s" in found[0][2]


def test_two_phases_are_set_against_the_faster_direct_solver():
    found = figures(
        rows.two_phase,
        {"product": spent(2.0), "direct": lambda s: spent(20.0 if s["solver"] == "cbc" else 30.0)},
    )
    assert [row[:2] for row in found] == [(10, ">= 4"), (10, ">= 8"), (10, ">= 5")]
    assert "one direct solve (HiGHS 30 s, CBC 20 s) to two phases (2 s)" in found[0][2]


def test_the_second_direct_solver_runs_no_longer_than_the_first_took():
    allowed = []

    def direct(settings):
        allowed.append((settings["solver"], settings["seconds"]))
        return spent(7.0, done=settings["solver"] == "highs")

    found = figures(rows.two_phase, {"product": spent(2.0), "direct": direct}, QUICK)
    assert allowed == [("highs", 1.25 * 4 * 2.0), ("cbc", 7.0)]
    assert found[0][0] == 3.5 and "HiGHS 7 s, CBC over 7 s" in found[0][2]


def test_direct_solves_that_did_not_end_give_a_lower_bound_that_says_so():
    def direct(settings):
        return spent(settings["seconds"], done=False)

    found = figures(rows.two_phase, {"product": spent(2.0), "direct": direct})
    assert [row[0] for row in found] == [5, 10, 6.25]
    assert "HiGHS over 10 s, CBC over 10 s" in found[0][2]


def test_a_direct_solver_that_died_leaves_the_row_out():
    def direct(settings):
        return spent(20.0) if settings["solver"] == "highs" else None

    assert figures(rows.two_phase, {"product": spent(2.0), "direct": direct}) == []


def test_building_is_set_against_the_plain_way_and_told_a_scenario():
    row = {"product": 1.0, "plain": 1.5, "product_rows": 0.5, "plain_rows": 1.25}
    found = figures(rows.by_dicts, {"building": row})
    assert [row[:2] for row in found] == [(2.5, ">= 2"), (1.5, ">= 2"), (0.01, "<= 0.06")]


def test_our_bound_is_judged_by_the_exact_form_solved_finer():
    found = figures(
        rows.bound,
        {
            "product": {"objective": 999.5, "bound": 1000.2},
            "direct": {"objective": 1000.0, "bound": 1000.1},
            "solved_size": {"done": True, "cut": True, "hidden": 0.0003},
        },
    )
    assert [row[:2] for row in found[:4]] == [
        (0.0003, "<= 0.001"),
        (pytest.approx(0.0002), "<= 0.001"),
        (0, "<= 1e-6"),
        (pytest.approx(0.0006), "<= 0.001"),
    ]
    assert len(found) == 8


def test_a_bound_below_a_known_order_is_told_as_a_fault():
    found = figures(
        rows.bound,
        {"product": {"objective": 99, "bound": 99.5}, "direct": {"objective": 100.0, "bound": 100.0}},
        QUICK,
    )
    assert found[1][:2] == (pytest.approx(0.005), "<= 1e-6")


def test_without_a_finer_solve_no_bound_is_judged():
    given = {"product": {"objective": 99, "bound": 99.5}, "direct": {"objective": None, "bound": None}}
    assert figures(rows.bound, given) == []


@pytest.mark.parametrize("name", rows.ROWS)
def test_a_row_whose_measurements_did_not_end_prints_nothing(name):
    assert figures(rows.ROWS[name], {}) == []


def test_what_lies_next_door_is_timed_and_set_against_cold_solves():
    told = {
        "pack_by_pack": {**spent(0.5), "building": 0.25, "moves": 8},
        "curve_by_one_master": lambda s: spent(2.0 if s["gap"] == 0.005 else 4.0),
        "curve_by_cold_solves": spent(32.0),
    }
    found = figures(rows.next_door, told)
    assert [row[:2] for row in found] == [(0.5, "<= 1"), (16, ">= 15"), (8, ">= 8")]
    assert "8 moves of a pack" in found[0][2]
    assert "twelve budgets to 0.1 % (cold 32 s, shared cuts 4 s)" in found[2][2]


def test_a_curve_that_was_not_proven_gives_no_ratio():
    told = {"pack_by_pack": None, "curve_by_one_master": spent(2.0, done=False)}
    assert figures(rows.next_door, told) == []


def test_quickly_only_the_small_operations_coarse_curve_is_measured():
    asked = []

    def by_one_master(settings):
        asked.append((settings["instance"].size.yards, settings["gap"]))
        return spent(1.0)

    told = {"curve_by_one_master": by_one_master, "curve_by_cold_solves": spent(20.0)}
    assert [row[0] for row in figures(rows.next_door, told, QUICK)] == [20]
    assert asked == [(6, 0.005)]
