"""A small task: the invented operation's order of eight seasons, found loosely, and two answers to set otherwise."""

from planner.beliefs.doubts import DOUBTS
from planner.projection import project
from planner.requirement import sizing_problem
from planner.season.assumptions import assumptions_of
from planner.season.scenarios import draw
from planner.solution import solve
from tests.planner.operations import DAY, operation

GAP = 0.02
SEASONS = 8


def doubts(*keys):
    return tuple(doubt for doubt in DOUBTS if doubt.key in keys)


def planned():
    """(operation, assumptions, problem, plan) as a run leaves them."""
    whole, told = operation(), assumptions_of({}, start=DAY, region="north")
    seasons = draw(whole, told, count=SEASONS, seed=1)
    problem = sizing_problem(whole, told, [project(whole, told, each) for each in seasons], budget=4500)
    return whole, told, problem, solve(problem, gap=GAP, seconds=60, prices=False)
