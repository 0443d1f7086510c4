"""The yard form: boxes and covers told by yard, all else in one pool; it judges an order made with the pool. Pure.

A package of the product and not of its measurements: the same form that judges an order says what goes where.
"""

from planner.yardform.form import yard_problem
from planner.yardform.hauling import with_hauling
from planner.yardform.judge import Judged, NotJudged, judge
from planner.yardform.telling import not_told, section_of

__all__ = ["Judged", "NotJudged", "judge", "not_told", "section_of", "with_hauling", "yard_problem"]
