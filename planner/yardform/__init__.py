"""The yard form: boxes and covers told by yard, all else in one pool; it judges an order made with the pool. Pure.

A package of the product and not of its measurements: the same form that judges an order says what goes where.
"""

from planner.yardform.form import yard_problem
from planner.yardform.hauling import with_hauling
from planner.yardform.judge import Judged, judge

__all__ = ["Judged", "judge", "with_hauling", "yard_problem"]
