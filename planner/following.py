"""What follows an order, with fresh seasons nobody planned with drawn and solved under it for the check.

Takes what a run is trying (its order, settings, solver) and the projections planned with; gives the report's section.
The arithmetic is planner.after's; where fresh seasons cannot be solved in time the section does without them.
"""

from functools import partial

from planner.after.planning import after_of
from planner.plan.facts import Facts
from planner.trial.seasons import fresh_seasons

FRESH = 40  # seasons at most: a share within about 15 of 100 either way
FARTHEST = 7_000_003  # a seed far from those planned with and tried on
MOST_SECONDS = 60.0
STAGE = "planning loads and evenings"


def followed(tried, projections):
    """`tried`: planner.trying.Tried; without a trial no fresh seasons are drawn."""
    tried.progress(STAGE)
    facts = Facts(
        operation=tried.operation, assumptions=tried.assumptions, problem=tried.problem, plan=tried.plan
    )
    return after_of(facts, projections, fresh=_fresh(tried))


def _fresh(tried):
    """(problem, plan) of fresh seasons under the same order, or None."""
    settings = tried.settings
    count = min(FRESH, settings.trial)
    if not count:
        return None
    drawn = fresh_seasons(
        tried.operation,
        tried.assumptions,
        tried.problem,
        count=count,
        seed=settings.seed + FARTHEST,
        breathe=partial(tried.progress, STAGE),
    )
    plan = tried.solve(
        drawn.problem,
        packs=tried.plan.packs(),
        gap=settings.gap,
        seconds=min(MOST_SECONDS, settings.seconds),
        prices=False,
    )
    return (drawn.problem, plan) if plan.is_order else None
