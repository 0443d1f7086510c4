"""The counts of a sheet become drafts: nothing of them is in the books until each is posted on its own page.

Takes records, yards by code, who and the file's key; writes through inventory/counting, inside the caller's
transaction. Gives what differs and what may explain it, worked out as on the count's page.
"""

import datetime as dt
from dataclasses import dataclass

from apiary.models import Colony
from inventory import counting
from inventory.counting.comparing import Compared
from inventory.loading.changes import NEW
from inventory.reconcile import Explanation, explain


@dataclass(frozen=True, kw_only=True)
class Drafted:
    """The draft of one place. `count` is its number, of no use after a dry run."""

    place: str
    day: dt.date
    count: int
    rows: tuple[Compared, ...]
    explanations: tuple[Explanation, ...]

    @property
    def differing(self):
        return tuple(row for row in self.rows if row.difference.gap)

    @property
    def words(self):
        differing = len(self.differing)
        agree = len(self.rows) - differing
        return f"a draft: {agree} agree with the book, {differing} differ"


def draft_counts(rows, yards, changes, *, who, key):
    """A Drafted for each place that was counted."""
    tags = {line.tag for row in rows for line in row.lines if line.tag}
    colonies = {colony.tag: colony for colony in Colony.objects.filter(tag__in=tags)}
    return tuple(_draft(row, yards[row.yard], colonies, changes, who=who, key=key) for row in rows)


def _draft(row, yard, colonies, changes, *, who, key):
    count = counting.begin(
        location=yard,
        day=row.day,
        who=who,
        key=f"{key}-{yard.pk}",
        with_colonies=any(line.tag for line in row.lines),
        note=row.note,
    )
    counting.enter(
        count,
        [
            (colonies[line.tag] if line.tag else yard, line.part, line.condition, line.quantity)
            for line in row.lines
        ],
    )
    compared = tuple(counting.compared(count))
    differences = [one.difference for one in compared if one.difference.gap]
    facts = counting.facts_about(differences, row.day, count=count) if differences else None
    drafted = Drafted(
        place=str(yard),
        day=row.day,
        count=count.pk,
        rows=compared,
        explanations=explain(differences, facts) if facts else (),
    )
    changes.say("counts", f"{yard}, {row.day}", NEW, drafted.words, at=row.row)
    return drafted
