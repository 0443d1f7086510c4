"""Orders tried: on the seasons they were planned with (rivals), on fresh ones (trial_of), and against bad years. Pure."""

from planner.trial.bad_years import CurveEffort, bad_years_curve
from planner.trial.contest import Effort, trial_of
from planner.trial.records import Trial
from planner.trial.rivals import WithoutBudget, rivals, without_budget
from planner.trial.telling import section_of
from planner.trial.thumb import bill_of, cut_alike, rule_of_thumb

__all__ = [
    "CurveEffort",
    "Effort",
    "Trial",
    "WithoutBudget",
    "bad_years_curve",
    "bill_of",
    "cut_alike",
    "rivals",
    "rule_of_thumb",
    "section_of",
    "trial_of",
    "without_budget",
]
