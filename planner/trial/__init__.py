"""Orders tried: on the seasons they were planned with (rivals), on fresh ones (trial_of), and against bad years. Pure."""

from planner.trial.rivals import WithoutBudget, rivals, without_budget
from planner.trial.thumb import bill_of, cut_alike, rule_of_thumb

__all__ = ["WithoutBudget", "bill_of", "cut_alike", "rivals", "rule_of_thumb", "without_budget"]
