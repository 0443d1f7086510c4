"""The belief check of one order: every doubt's ends weighed in the time there is, told as a section of the report.

Takes the operation, the assumptions, the problem solved and its plan; gives a BeliefsSection. On the same seasons the
order was planned with, drawn by the same seed. Keeps the time; the weighing itself is planner.beliefs'.
"""

from planner.beliefs.doubts import DOUBTS
from planner.beliefs.ends import Beliefs, problem_at
from planner.beliefs.telling import Standing, section_of
from planner.checking.lanes import LANES, answers_of
from planner.checking.task import Task, ends_of

ONE_END = 30.0
STAGE = "checking the beliefs"


def check(
    operation,
    assumptions,
    problem,
    plan,
    *,
    seed,
    gap=0.001,
    seconds=90.0,
    lanes=LANES,
    doubts=DOUBTS,
    progress=lambda stage: None,
    cancelled=None,
):
    """The section; `seconds` for all, what they do not reach is named in it."""
    progress(STAGE)
    task = task_of(operation, assumptions, problem, plan, seed=seed, gap=gap, doubts=doubts)
    answers = answers_of(
        task,
        seconds=seconds,
        lanes=lanes,
        tell=lambda done, of: progress(f"{STAGE}, {done} of {of}"),
        cancelled=cancelled,
    )
    standing = Standing(
        packs=plan.packs(),
        spend=plan.spend,
        worth=plan.objective,
        gap=gap * max(1.0, abs(plan.objective)),
    )
    beliefs = Beliefs(operation=operation, assumptions=assumptions)
    return section_of(beliefs, task.ends, answers, standing, seasons=len(problem.scenarios), doubts=doubts)


def other_problems(operation, assumptions, problem, *, seed, doubts=DOUBTS):
    """(name, Problem) of every end: survival_share-low and so on; those that are the problem itself too."""
    for doubt, other in ends_of(doubts, operation, assumptions):
        yield f"{doubt.key}-{other.side}", problem_at(other.beliefs, problem, seed=seed)


def task_of(operation, assumptions, problem, plan, *, seed, gap, doubts=DOUBTS, seconds=ONE_END):
    return Task(
        problem=problem,
        seed=seed,
        packs=tuple((offer, period, count) for (offer, period), count in sorted(plan.packs().items())),
        gap=gap,
        seconds=seconds,
        ends=ends_of(doubts, operation, assumptions),
    )
