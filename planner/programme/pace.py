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
    changes: dict  # (part, periods after the start) -> units a run brings (+) or takes (−)
    worths: tuple  # by start: what a run makes, less what it takes, its cost and its work
    takes: frozenset
    makes: frozenset
    shares: bool  # its minutes, or what it makes, are part of the work shared with others
    pinned: tuple  # periods in which its runs are told apart in any case

    @property
    def pays(self):
        """Whether a run in the last period is worth something by itself."""
        return self.worths[-1] > 0

    @property
    def steady(self):
        """Whether a run is worth the same in every period."""
        return max(self.worths) - min(self.worths) <= 1e-9


def paces(draft):
    """A Pace for each recipe. Where gear is hauled, any part may go and come in any period: all are pinned."""
    sharing = _sharing(draft.problem)
    return [_pace(draft, recipe, recipe.code in sharing) for recipe in draft.problem.recipes]


def _changes(recipe):
    found: dict[tuple, float] = {}
    for part, n in recipe.takes.items():
        found[part, 0] = found.get((part, 0), 0.0) - n
    for part, n in recipe.makes.items():
        at = part, recipe.lead_periods
        found[at] = found.get(at, 0.0) + n
    return {at: n for at, n in found.items() if n}


def _worths(draft, recipe, changes):
    spent = recipe.cost + recipe.work_minutes / 60 * draft.problem.work.cost_per_hour
    starts = range(draft.problem.periods - recipe.lead_periods)
    rows = [(draft.worth[part], after, n) for (part, after), n in changes.items()]
    if all(worth[0] == worth[-1] for worth, _, _ in rows):  # nothing it touches costs anything to hold
        return (sum(n * worth[0] for worth, _, n in rows) - spent,) * len(starts)
    return tuple(sum(n * worth[start + after] for worth, after, n in rows) - spent for start in starts)


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


def _pace(draft, recipe, shares):
    problem, changes = draft.problem, _changes(recipe)
    worths = _worths(draft, recipe, changes)
    waits = all(later >= sooner - 1e-9 for sooner, later in pairwise(worths))
    limited = problem.work.minutes_per_period is not None and recipe.work_minutes
    pinned = problem.hauls or (limited and recipe.lead_periods) or not waits
    return Pace(
        recipe=recipe,
        changes=changes,
        worths=worths,
        takes=frozenset(part for (part, _), n in changes.items() if n < 0),
        makes=frozenset(part for (part, _), n in changes.items() if n > 0),
        shares=shares,
        pinned=tuple(range(len(worths))) if pinned else (),
    )
