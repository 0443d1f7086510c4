"""What follows an order is planned with fresh seasons where there is a trial, and without where they cannot be solved."""

from dataclasses import replace
from types import SimpleNamespace

import pytest

from planner import following
from tests.planner.after.conftest import followed  # noqa: F401


@pytest.fixture
def tried(followed):  # noqa: F811
    after, (_problem, plan) = followed
    facts = after.facts
    told: list = []
    return SimpleNamespace(
        operation=facts.operation,
        assumptions=facts.assumptions,
        problem=facts.problem,
        plan=facts.plan,
        settings=SimpleNamespace(trial=0, seed=1, gap=0.01, seconds=30),
        progress=lambda stage, bound=None, gap=None: told.append(stage),
        told=told,
        solve=lambda *_args, **_more: replace(plan, objective=None),
        projections=after.projections,
    )


def test_without_a_trial_no_fresh_seasons_are_drawn(tried):
    section = following.followed(tried, tried.projections)
    assert section.fresh is None and section.loads
    assert tried.told == ["planning loads and evenings"]


def test_fresh_seasons_that_cannot_be_solved_in_time_are_left_out(tried):
    tried.settings.trial = 3
    assert following.followed(tried, tried.projections).fresh is None
    assert len(tried.told) == 4  # once to begin, once a season: it can be stopped there


def test_a_truck_that_takes_not_even_one_piece_costs_neither_the_order_nor_the_section(tried):
    tried.operation = replace(tried.operation, truck_lb=1)
    section = following.followed(tried, tried.projections)
    assert section.bench.jobs and section.feed
    assert any("not even one of these" in said for said in section.sentences)


def test_a_stage_fits_the_runs_column():
    assert len(following.STAGE) <= 40
