"""Questions next door to a solved order: a pack more or fewer of every line, other budgets, less money."""

from planner.solution.nearby.apart import study_apart
from planner.solution.nearby.nearby_json import as_json, nearby_of
from planner.solution.nearby.records import BudgetPoint, LessMoney, Moved, Nearby
from planner.solution.nearby.studying import study

__all__ = ["BudgetPoint", "LessMoney", "Moved", "Nearby", "as_json", "nearby_of", "study", "study_apart"]
