"""Figures worked out and never asked: each is shown as it was used, with where it comes from."""

import datetime as dt
from dataclasses import replace

import pytest

from planner.plan.computed import AFTER, computed_rows
from planner.requirement.values import BAD_YEARS_WEIGHT
from planner.season.assumptions import assumptions_of
from planner.season.survival import WINTER_CORRELATION
from planner.sizing.records import BadYears
from tests.planner.operations import operation
from tests.planner.plan import small

WINTERS = "60/54, 70/30, 80/72, 80/41"


def rows_of(assumptions=None, problem=None):
    rows = computed_rows(
        small.operation(),
        assumptions or small.assumptions(),
        problem or small.problem(bad_years={"weight": 0}),
    )
    return {row.name: row for row in rows}


def test_every_figure_has_words_and_a_source_or_says_judgement():
    rows = rows_of()
    assert len(rows) > 10
    for row in rows.values():
        assert row.group and row.value and row.source


def test_how_far_winters_swing_is_the_surveys_where_no_winters_are_told():
    row = rows_of()["How far winters swing, all yards alike"]
    assert row.value.startswith(f"{WINTER_CORRELATION:g}: among 100 colonies luck varies 8.4 times")
    assert "loss surveys" in row.source and "your own" not in row.source


def test_how_far_winters_swing_is_the_keepers_own_where_they_are_told():
    told = small.assumptions(winters=WINTERS)
    row = rows_of(told)["How far winters swing, all yards alike"]
    assert row.value.startswith(f"{told.winter_correlation:.3g}: ")
    assert row.source.startswith("fitted to your own winters")


@pytest.mark.parametrize("weight", sorted(set(BAD_YEARS_WEIGHT.values())))
def test_the_weight_of_bad_years_is_the_one_planned_with(weight):
    problem = replace(small.problem(), bad_years=BadYears(weight=weight))
    row = rows_of(problem=problem)["Weight of the worst 10\N{NO-BREAK SPACE}% of seasons beside all of them"]
    assert row.value == (
        f"{weight:.0%}".replace("%", "\N{NO-BREAK SPACE}%") if weight else "none of their own"
    )
    assert "judgement" in row.source


def test_what_each_piece_is_worth_after_the_season_is_the_problems_own():
    problem = small.problem()
    parts = (replace(problem.parts[0], end_value=7.5), *problem.parts[1:])
    rows = rows_of(problem=replace(problem, parts=parts))
    (worth,) = [row for row in rows.values() if row.group == AFTER]
    assert worth.value == "$7.50"
    assert worth.name == small.operation().parts_by_code[parts[0].code].name


def test_a_cost_of_lying_idle_is_told():
    problem = small.problem()
    parts = (replace(problem.parts[0], holding_cost=0.25), *problem.parts[1:])
    row = rows_of(problem=replace(problem, parts=parts))["What a piece costs that lies idle in store"]
    assert row.value == "$0.25 a week at most"
    assert rows_of()["What a piece costs that lies idle in store"].value.startswith("nothing")


def test_the_last_day_planned_for_is_told():
    assert rows_of()["The last day planned for"].value == "29 November 2027"


def test_a_flow_on_at_the_start_is_told_to_be_left_to_the_next_order():
    whole = operation(day=dt.date(2026, 7, 1))
    told = assumptions_of({}, start=whole.day, region="north")
    row = computed_rows(whole, told, small.problem())[0]
    assert row.value == "29 June 2027; what Clover may bring again by then is left to the next order"
    assert whole.yards[1].windows[0].name == "Clover"
