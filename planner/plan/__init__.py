"""The order in a keeper's words: from a solved sizing problem to lines by supplier with their reasons. Pure.

`report_of` makes the Report; json_form.py stores it; text.py prints it.
"""

from planner.plan.records import Report
from planner.plan.report import report_of

__all__ = ["Report", "report_of"]
