"""The study of what lies next door, in a child process that can be called off.

Takes a Problem and its Plan; gives a Nearby, as studying.py does.
"""

from planner.solution.apart import answer_apart
from planner.solution.nearby.nearby_json import nearby_of
from planner.solution.nearby.studying import nothing


def study_apart(
    problem,
    plan,
    *,
    budgets=None,
    more=100.0,
    less=300.0,
    gap=0.001,
    seconds=60.0,
    progress=None,
    cancelled=None,
):
    """The Nearby, studied in a child. cancelled() is asked several times a second; progress(stage, bound, gap) is told."""
    settings = {"budgets": budgets, "more": more, "less": less, "gap": gap, "seconds": seconds}
    task = "study", (problem, plan), settings
    data = answer_apart(task, seconds=seconds, progress=progress, cancelled=cancelled)
    if data is None:
        return nothing(seconds, "What lies next to this order was not worked out in time.")
    return nearby_of(data)
