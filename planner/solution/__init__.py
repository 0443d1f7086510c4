"""Solves a sizing problem: solve() here, solve_apart() in a child process; the Plan, its JSON, and money machines."""

from planner.solution.apart import Cancelled, solve_apart
from planner.solution.machines import money_machines
from planner.solution.plan_json import as_json, plan_of
from planner.solution.records import Plan
from planner.solution.solving import solve

__all__ = ["Cancelled", "Plan", "as_json", "money_machines", "plan_of", "solve", "solve_apart"]
