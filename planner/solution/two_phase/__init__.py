"""The two-phase way for many scenarios: the order by cuts, first in fractions, then in whole numbers."""

from planner.solution.two_phase.planning import judged, solve_in_two_phases, suits, takes
from planner.solution.two_phase.search import CannotCut, NoOrder

__all__ = ["CannotCut", "NoOrder", "judged", "solve_in_two_phases", "suits", "takes"]
