"""What recipes take and make, net, and whether their runs may wait: the facts the calendar of recipes rests on.

Takes a draft; gives a Pace for each recipe. Knows no scenario.
"""

from dataclasses import dataclass
from itertools import pairwise

from planner.sizing.records import Recipe


@dataclass(frozen=True, kw_only=True)
class Pace:
    """A recipe's pace: what it takes and makes net, and the periods it may not be moved from."""

    recipe: Recipe
    takes: frozenset
    makes: frozenset
    pays: bool  # a run in the last period is worth something by itself
    shares: bool  # its minutes, or what it makes, are part of the work shared with others
    steady: bool  # a run is worth the same in every period
    pinned: tuple  # periods in which its runs are told apart in any case


def paces(draft, pooled):
    """A Pace for each recipe. Where gear is hauled, any part may go and come in any period: all are pinned."""
    sharing = _sharing(draft.problem)
    return [_pace(draft, recipe, recipe.code in sharing, pooled) for recipe in draft.problem.recipes]


def changes(recipe):
    """(part, periods after the start) -> units a run brings (+) or takes (−)."""
    found: dict[tuple, float] = {}
    for part, n in recipe.takes.items():
        found[part, 0] = found.get((part, 0), 0.0) - n
    for part, n in recipe.makes.items():
        at = part, recipe.lead_periods
        found[at] = found.get(at, 0.0) + n
    return {at: n for at, n in found.items() if n}


def worth_of(draft, recipe, start):
    """Money a run begun in a period adds by itself: what it makes less what it takes, its cost and its work."""
    worth = -recipe.cost - recipe.work_minutes / 60 * draft.problem.work.cost_per_hour
    for (part, after), n in changes(recipe).items():
        worth += n * draft.worth[part][start + after]
    return worth


def _sharing(problem):
    """Recipes without lead that take limited minutes, and those without lead that make what such recipes take."""
    if problem.work.minutes_per_period is None:
        return set()
    instant = [recipe for recipe in problem.recipes if not recipe.lead_periods]
    sharing = {recipe.code for recipe in instant if recipe.work_minutes}
    while True:
        taken = {part for recipe in instant if recipe.code in sharing for part in recipe.takes}
        more = {recipe.code for recipe in instant if taken & set(recipe.makes)} | sharing
        if more == sharing:
            return sharing
        sharing = more


def _pace(draft, recipe, shares, pooled):
    last = draft.problem.periods - 1 - recipe.lead_periods
    worths = [worth_of(draft, recipe, start) for start in range(last + 1)]
    waits = all(later >= sooner - 1e-9 for sooner, later in pairwise(worths))
    limited = draft.problem.work.minutes_per_period is not None and recipe.work_minutes
    own_time = limited and recipe.lead_periods
    pinned = not pooled or own_time or not waits
    brings = changes(recipe).items()
    return Pace(
        recipe=recipe,
        takes=frozenset(part for (part, _), n in brings if n < 0),
        makes=frozenset(part for (part, _), n in brings if n > 0),
        pays=worths[-1] > 0,
        shares=shares,
        steady=pooled and max(worths) - min(worths) <= 1e-9,
        pinned=tuple(range(last + 1)) if pinned else (),
    )
