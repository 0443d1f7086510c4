"""One small order worked out and followed: three of the invented yards, eight seasons, four fresh ones."""

from dataclasses import replace

import pytest

from planner.after.planning import After
from planner.plan.facts import Facts
from planner.projection import project
from planner.requirement import sizing_problem
from planner.season.assumptions import assumptions_of
from planner.season.scenarios import draw
from planner.solution import solve_apart
from planner.trial.seasons import fresh_seasons
from tests.planner.operations import operation

YARDS = ("shed", "alder", "birch", "fir")


def three_yards(**changed):
    whole = operation()
    return replace(
        whole,
        yards=tuple(yard for yard in whole.yards if yard.code in YARDS),
        colonies=tuple(group for group in whole.colonies if group.yard in YARDS),
        stock=tuple(
            replace(line, quantity=line.quantity // 3 or 1) if line.yard == "shed" else line
            for line in whole.stock
        ),
        **changed,
    )


@pytest.fixture(scope="package")
def followed():
    """(After, fresh) of the small order."""
    whole = three_yards()
    told = assumptions_of({}, start=whole.day, region=whole.region, operation=whole)
    projections = [project(whole, told, drawn) for drawn in draw(whole, told, count=8, seed=1)]
    problem = sizing_problem(whole, told, projections, budget=2500)
    plan = solve_apart(problem, gap=0.01, seconds=60)
    drawn = fresh_seasons(whole, told, problem, count=5, seed=99).problem
    under = solve_apart(drawn, packs=plan.packs(), gap=0.01, seconds=60, prices=False)
    facts = Facts(operation=whole, assumptions=told, problem=problem, plan=plan)
    return After(facts=facts, projections=tuple(projections)), (drawn, under)


@pytest.fixture(scope="package")
def after(followed):
    return followed[0]


@pytest.fixture(scope="package")
def section(followed):
    return followed[0].section(followed[1])
