"""A projection in gear: the sizing problem, the requirement by week, and use codes in trade words. Pure."""

from planner.requirement.by_week import RequirementLine, by_week
from planner.requirement.prices import Unpriced
from planner.requirement.problem import sizing_problem
from planner.requirement.words import describe

__all__ = ["RequirementLine", "Unpriced", "by_week", "describe", "sizing_problem"]
