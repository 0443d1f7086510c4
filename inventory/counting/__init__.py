"""Counts of a yard or the shed, and where found gear came from: begun, entered, compared, explained, posted.

The only writer of Count, CountLine and FoundAnswer. Movements are written by ledger; explanations come from
reconcile. Each act is one transaction; a resend changes nothing.
"""

from inventory.counting.comparing import Compared, compared, token_of
from inventory.counting.drafting import begin, drop, enter
from inventory.counting.due import DueRow, due, interval_months, set_interval
from inventory.counting.facts import facts_about
from inventory.counting.found import answer, difference_of, makings_of, settle, unanswered
from inventory.counting.posting import post_count
from inventory.counting.sheet import Sheet, sheet_of

__all__ = [
    "Compared",
    "DueRow",
    "Sheet",
    "answer",
    "begin",
    "compared",
    "difference_of",
    "drop",
    "due",
    "enter",
    "facts_about",
    "interval_months",
    "makings_of",
    "post_count",
    "set_interval",
    "settle",
    "sheet_of",
    "token_of",
    "unanswered",
]
