"""Rows against the naive form: ratios of sizes and times, lower bounds that say so, which form was timed."""

from dataclasses import replace

import pytest

from planner.bench import against
from planner.bench.scales import QUICK
from tests.planner.bench.told import LONG, figures, spent

SIZES = {
    "solved_size": {"variables": 50, "rows": 40, "done": True},
    "pooled_size": {"variables": 100, "rows": 60},
    "naive_sizes": {"variables": 20000, "rows": 9000, "lean": 8000, "lean_rows": 4000},
}


def ended(building, solving):
    return {"seconds": building + solving, "building": building, "solving": solving, "done": True}


def stopped(settings):
    """Each run is stopped at what it was allowed."""
    return {
        "seconds": settings["seconds"],
        "building": 1.0,
        "solving": settings["seconds"] - 1.0,
        "done": False,
    }


def test_sizes_are_told_of_the_whole_naive_form_and_of_the_lean_one():
    found = figures(against.against_naive, SIZES)
    assert [row[:2] for row in found] == [(400, ">= 100"), (160, ">= 100")]
    assert "every part at every place (20,000 × 9,000 to 50 × 40; " in found[0][2]
    assert "200 times the exact pooled form's 100 × 60)" in found[0][2]
    assert "only where anything touches it (8,000 × 4,000 to 50 × 40; " in found[1][2]


def test_without_a_proven_order_no_size_is_told():
    said = []
    given = {**SIZES, "solved_size": {"done": False}}
    assert figures(against.against_naive, given, tell=said.append) == []
    assert (
        "left out, not proven in time: size of what is solved of 6 yards, 90 colonies, 20 scenarios" in said
    )


def test_times_are_ratios_of_what_the_lean_form_took_and_tell_building_apart():
    def naive(settings):
        return ended(20.0, 220.0 if settings["instance"].size.yards == 6 else 580.0)

    found = figures(against.against_naive, {"product": spent(2.0), "naive": naive})
    assert [row[:2] for row in found] == [(120, ">= 40"), (120, ">= 60"), (300, ">= 200")]
    assert all("the lean naive form" in row[2] for row in found)
    assert "by HiGHS (240 s: 20 s building, 220 s handing over and solving) to ours (2 s)" in found[0][2]
    assert "by CBC" in found[1][2]


def test_where_the_lean_form_ends_too_soon_the_whole_one_is_timed_as_well():
    def naive(settings):
        return ended(10.0, 20.0 if settings["lean"] else 190.0)

    found = figures(against.against_naive, {"product": spent(2.0), "naive": naive})
    assert [row[0] for row in found] == [15, 100, 15, 100, 15, 100]
    assert "the lean naive form" in found[0][2] and "every part at every place" in found[1][2]


def test_a_naive_run_is_stopped_a_little_past_the_target_and_told_as_a_lower_bound():
    found = figures(against.against_naive, {"product": spent(2.0), "naive": stopped})
    assert [row[:2] for row in found] == [(50, ">= 40"), (75, ">= 60"), (250, ">= 200")]
    assert "at least: stopped after 1 s building, 99 s handing over and solving" in found[0][2]


def test_no_naive_run_goes_on_past_the_longest_allowed():
    scale = replace(LONG, opponent_seconds=60.0)
    found = figures(against.against_naive, {"product": spent(2.0), "naive": stopped}, scale)
    assert {row[0] for row in found} == {30}


def test_a_naive_run_killed_before_it_could_tell_is_a_lower_bound():
    found = figures(against.against_naive, {"product": spent(2.0), "naive": spent(100.0, done=False)})
    assert "at least: killed after 100 s" in found[0][2]


def test_without_a_proven_order_of_ours_no_ratio_is_printed():
    given = {"product": spent(2.0, done=False), "naive": ended(1.0, 90.0)}
    assert figures(against.against_naive, given) == []


def test_quick_times_only_what_ends_within_a_minute_and_says_so():
    said = []
    given = {"product": spent(0.8), "naive": ended(1.0, 70.0)}
    found = figures(against.against_naive, given, QUICK, tell=said.append)
    assert [row[1] for row in found] == [">= 40"]
    assert [text.partition(" s: ")[0] for text in said if "may take" in text] == [
        "left out, it may take 60",
        "left out, it may take 200",
    ]


def test_forms_are_compared_by_their_relative_difference():
    found = figures(
        against.yard_form,
        {
            "linear_forms": {"naive": 1000.0, "yard": 999.0, "free_naive": 1100.0, "free_yard": 1100.0},
            "pooled_order_in_naive": {"held": 995.0, "best": 999.0, "bound": 1000.0},
        },
    )
    assert [row[:2] for row in found] == [
        (pytest.approx(0.001), "<= 0.0015"),
        (0, "<= 1e-6"),
        (pytest.approx(0.005), "<= 0.005"),
    ]
    assert "loses at most (0.10% of it not proven)" in found[2][2]


def test_forms_not_solved_in_time_are_not_compared_and_said():
    said = []
    missing = {
        "linear_forms": {"naive": None, "yard": 1.0},
        "pooled_order_in_naive": {"held": 1, "best": None, "bound": None},
    }
    assert figures(against.yard_form, missing, tell=said.append) == []
    assert len(said) == 2 and all("not solved in time" in text for text in said)
