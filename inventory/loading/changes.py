"""What a sheet changes in the books, one record each, and all of it together.

Takes words; gives records to show, the same after a dry run and after posting.
"""

import datetime as dt
import hashlib
from collections import Counter
from dataclasses import dataclass

KINDS = ("keeper", "yards", "flows", "colonies", "gear", "suppliers", "prices", "winters", "counts")
SHEETS = {kind: kind.capitalize() for kind in KINDS} | {"counts": "Places counted"}
NEW, CHANGED, SAME = "new", "changed", "as it is"


@dataclass(frozen=True, kw_only=True)
class Change:
    """One thing of the sheet: which kind, its name, what becomes of it and a word on how. `at`: its row, 0 where the
    sheet does not name it."""

    kind: str
    name: str
    becomes: str
    detail: str = ""
    at: int = 0

    @property
    def where(self):
        """Gear row 5."""
        return f"{SHEETS[self.kind]} row {self.at}" if self.at else ""


@dataclass(frozen=True, kw_only=True)
class Loaded:
    """`posted` is False after a dry run, and where this very file was posted before (`first_on` says when)."""

    day: dt.date
    changes: tuple[Change, ...] = ()
    drafts: tuple = ()  # counts that were drafted
    posted: bool = False
    first_on: dt.date | None = None
    refusals: tuple[str, ...] = ()

    @property
    def counts(self):
        """(kind, new, changed, as it is) for every kind the sheet speaks of."""
        tally = Counter((change.kind, change.becomes) for change in self.changes)
        rows = [(kind, *(tally[kind, word] for word in (NEW, CHANGED, SAME))) for kind in KINDS]
        return tuple(row for row in rows if any(row[1:]))

    @property
    def sentence(self):
        """What happened or would happen, in one sentence."""
        if self.first_on is not None:
            return f"This very file was posted on {self.first_on}: nothing was posted again."
        if self.drafts and len(self.drafts) == len(self.changes):
            drafts = f"{len(self.drafts)} draft{'s' if len(self.drafts) > 1 else ''} of counts"
            return f"{'Made' if self.posted else 'Would make'} {drafts}: nothing of it is in the books yet."
        sums = [(word, sum(row[at] for row in self.counts)) for at, word in ((1, NEW), (2, CHANGED))]
        told = " and ".join(f"{count} {word}" for word, count in sums if count) or "nothing new"
        return f"Posted: {told}." if self.posted else f"Would post: {told}."

    @property
    def mark(self):
        """A short word for exactly these changes: shown with the dry run, told again when it is to be posted."""
        told = [(one.kind, one.name, one.becomes, one.detail, one.at) for one in self.changes]
        drafts = [(str(row.location), row.name, row.words) for draft in self.drafts for row in draft.rows]
        return hashlib.sha256(repr((told, drafts)).encode()).hexdigest()[:24]

    @property
    def differences(self):
        """The changes without what stays as it is, unless there is a word to say about it."""
        return tuple(change for change in self.changes if change.becomes != SAME or change.detail)


class Changes:
    """Gathers changes while a sheet is posted."""

    def __init__(self):
        self.all = []

    def say(self, kind, name, becomes, detail="", *, at=0):
        self.all.append(Change(kind=kind, name=str(name), becomes=becomes, detail=detail, at=at))


def saved(row, values, *, kind, changes, name, at=0):
    """Sets the values on a model row, saves it where it is new or something changed, and says what."""
    is_new = row.pk is None
    changed = differing(row, values)
    for field in changed:
        setattr(row, field, values[field])
    if is_new or changed:
        row.save()
    say_saved(row, changed, kind=kind, changes=changes, name=name, is_new=is_new, at=at)
    return row


def differing(row, values):
    """Fields of a model row that the values change."""
    return [field for field, value in values.items() if getattr(row, field) != value]


def say_saved(row, changed, *, kind, changes, name, is_new, at=0):
    """Says of a row whether it is new, and which of its fields changed."""
    if is_new:
        changes.say(kind, name, NEW, at=at)
    else:
        words = ", ".join(labels_of(row, changed))
        changes.say(kind, name, CHANGED if changed else SAME, words, at=at)


def labels_of(row, fields):
    """What the fields of a model row are called."""
    return [str(row._meta.get_field(field).verbose_name) for field in fields]
