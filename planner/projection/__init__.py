"""The season projected: colonies by week and scenario, and what they ask for. Pure."""

from planner.projection.homes import home_set
from planner.projection.project import project
from planner.projection.records import Projection

__all__ = ["Projection", "home_set", "project"]
