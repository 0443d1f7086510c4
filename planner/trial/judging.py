"""Many orders judged on the same fresh seasons, and the best that could be done knowing each season beforehand.

Takes a problem of fresh scenarios; gives each season's worth under an order, its recourse doing its best, and each
season's bound under perfect foresight. `breathe` is called between seasons: it may raise to stop the work.
"""

from dataclasses import replace

from planner.programme import build
from planner.solution import highs
from planner.solution.recourse import NoRecourse, Recourse
from planner.trial.seasons import of_seasons
from planner.trial.statistics import worst_mean

BLOCK = 10


def still():
    """Nothing to say between seasons."""


class Judge:
    """Fresh seasons made ready once; then every order is judged on all of them, the same for each."""

    def __init__(self, problem, *, breathe=still):
        self.problem, self.breathe = problem, breathe
        self.blocks = []
        for first in range(0, len(problem.scenarios), BLOCK):
            breathe()
            self.blocks.append(Recourse(of_seasons(problem, problem.scenarios[first : first + BLOCK])))

    def worths(self, packs):
        """Each season's worth under the order, or None where some season's musts cannot be served under it."""
        found = []
        for block in self.blocks:
            self.breathe()
            try:
                found.extend(block.worths(packs))
            except NoRecourse:
                return None
        return tuple(found)


def foresight(problem, *, enough=lambda seasons: False, breathe=still):
    """For each season a bound on what the best order for that very season is worth: whole packs may be parted and
    shipping shared out in the bound, so it is never too low. Ends early where `enough(seasons so far)`."""
    bounds: list[float] = []
    for scenario in problem.scenarios:
        if enough(len(bounds)):
            break
        breathe()
        alone = replace(problem, scenarios=(replace(scenario, probability=1.0),))
        answer = highs.solve(highs.matrix_of(build(alone).lp), relaxed=True)
        if answer.bound is None:
            break
        bounds.append(answer.bound)
    return tuple(bounds)


def value_of(worths, bad_years, chances=None):
    """What the programme maximises: the mean, weighed against the mean of the worst share."""
    mean = (
        sum(worths) / len(worths)
        if chances is None
        else sum(c * w for c, w in zip(chances, worths, strict=True))
    )
    if not bad_years.weight:
        return mean
    return (1 - bad_years.weight) * mean + bad_years.weight * worst_mean(worths, bad_years.share, chances)
