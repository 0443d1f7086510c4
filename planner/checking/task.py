"""What is weighed: the order as it stands, the problem it was made for, and every other value of every answer.

Takes a Task and the number of an end; gives what came of it as plain figures. Knows no process.
"""

from dataclasses import dataclass
from typing import Any

from planner.beliefs.ends import Beliefs, other_values, problem_at
from planner.beliefs.regret import NotJudged, regret_of, spend_of
from planner.sizing.records import Problem


@dataclass(frozen=True, kw_only=True)
class Task:
    """`packs` [(offer, period, packs)]; `ends` (doubt, other value) in order."""

    problem: Problem
    seed: int
    packs: tuple
    gap: float
    seconds: float  # for one end at most
    ends: tuple[tuple[Any, Any], ...]


def ends_of(doubts, operation, assumptions):
    """(doubt, other value) of all that can be otherwise, both ends of one doubt together."""
    beliefs = Beliefs(operation=operation, assumptions=assumptions)
    return tuple((doubt, other) for doubt in doubts for other in other_values(doubt, beliefs))


def weighed(task, number):
    """{held, best, bound, spend, packs} of one end; {same} where the answer touches nothing; {why} where the order
    cannot be judged."""
    _doubt, other = task.ends[number]
    problem = problem_at(other.beliefs, task.problem, seed=task.seed)
    if problem == task.problem:
        return {"same": True}
    packs = {(offer, period): count for offer, period, count in task.packs}
    try:
        found = regret_of(problem, packs, gap=task.gap, seconds=task.seconds)
    except NotJudged as why:
        return {"why": str(why)}
    return {
        "held": found.held,
        "best": found.best,
        "bound": found.bound,
        "spend": spend_of(problem, found.packs),
        "packs": [[offer, period, count] for (offer, period), count in sorted(found.packs.items())],
    }
