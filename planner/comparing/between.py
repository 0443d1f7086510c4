"""What changed from one run of a season to the next, and why.

Takes two runs told as records (name, report, the books kept with them); gives lines that differ, money, and causes as
sentences: colonies counted, orders received, gear found or gone, prices, answers, the budget. The same twice: nothing.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal

from planner.comparing.causes import causes_between
from planner.comparing.lines import LineChange, line_changes
from planner.plan.records import Report


@dataclass(frozen=True, kw_only=True)
class Told:
    """A run as it is compared. `books` are empty where a run kept none; `supposed`: a what-if in words."""

    name: str
    report: Report
    books: Mapping = field(default_factory=dict)
    supposed: str = ""


@dataclass(frozen=True, kw_only=True)
class Changes:
    since: str
    lines: tuple[LineChange, ...]
    causes: tuple[str, ...]
    spend_before: Decimal
    spend_now: Decimal

    @property
    def more(self):
        return self.spend_now - self.spend_before

    @property
    def is_change(self):
        return bool(self.lines or self.causes)


def between(before, now):
    return Changes(
        since=before.name,
        lines=line_changes(before.report, now.report),
        causes=causes_between(before, now),
        spend_before=before.report.spend,
        spend_now=now.report.spend,
    )
