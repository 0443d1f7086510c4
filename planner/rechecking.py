"""The beliefs of an order already found, checked later, on the seasons it was planned with.

Takes a done run and the facts of the same evening; gives its report with the check in it. Refuses where the books are
no longer those the order was found from. Writes nothing.
"""

from planner.checking.check import check
from planner.errors import BooksMoved
from planner.plan.facts import Facts
from planner.plan.json_form import report_from
from planner.plan.otherwise import with_beliefs
from planner.projection import project
from planner.requirement import sizing_problem
from planner.season.scenarios import draw
from planner.sizing.reading import problem_of
from planner.solution.plan_json import plan_of

CHECK_SECONDS = 240.0


def checked_report(run, operation, assumptions, *, progress, cancelled, seconds=None):
    """The run's report, its beliefs checked in so many seconds at most (the usual ones where none are told)."""
    problem, plan = problem_of(run.problem), plan_of(run.plan)
    progress("drawing the seasons")
    if _drawn_again(run, operation, assumptions, progress) != problem:
        raise BooksMoved(run=run.pk, day=run.day)
    section = check(
        operation,
        assumptions,
        problem,
        plan,
        seed=run.seed,
        gap=run.gap,
        seconds=CHECK_SECONDS if seconds is None else seconds,
        progress=progress,
        cancelled=cancelled,
    )
    facts = Facts(operation=operation, assumptions=assumptions, problem=problem, plan=plan, checked=section)
    return with_beliefs(report_from(run.report), facts)


def _drawn_again(run, operation, assumptions, progress):
    """The sizing problem as the books and answers make it now."""
    projections = []
    for scenario in draw(operation, assumptions, count=run.scenarios, seed=run.seed):
        progress("working out the seasons again")
        projections.append(project(operation, assumptions, scenario))
    return sizing_problem(operation, assumptions, projections, budget=run.budget)
