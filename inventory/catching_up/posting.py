"""An evening's table booked: every row by its own act, in the order of their days, all in one transaction or none.

Takes Typed rows; gives the acts, or EveningRefused with every fault by row. The same key twice books once. Undone
as one, last act first.
"""

from django.db import transaction

from apiary.rights import NotYours
from inventory.catching_up.acts import post_row
from inventory.catching_up.known import Known
from inventory.catching_up.reading import read_rows
from inventory.errors import NotEnough, NothingGiven, Refused
from inventory.ledger.posting import lock_books
from inventory.models import Act
from inventory.yardwork.undoing import undo

LONGEST_KEY = 50  # room for the number of the row in the key of its act


class EveningRefused(Exception):
    """Nothing was booked; `faults` has the sentences by row's number, `short` the pieces the book has not."""

    def __init__(self, faults, short=()):
        self.faults = dict(sorted(faults.items()))
        self.short = tuple(short)
        super().__init__("; ".join(f"row {n}: {' '.join(told)}" for n, told in self.faults.items()))


class _Tried(Exception):
    """Ends a transaction of which nothing is to stay."""


def acts_of(key):
    """The acts of an evening by its key, in the order booked."""
    return list(Act.objects.filter(key__startswith=f"{key}:", reverses__isnull=True).order_by("pk"))


def post_evening(rows, *, who, key, found_allowed=False, note="", only_check=False):
    """Books all rows; with `only_check` books none and gives what would have been booked."""
    if not 1 <= len(str(key)) <= LONGEST_KEY:
        raise ValueError(f"the key of an evening has 1 to {LONGEST_KEY} letters, got {key!r}")
    acts: list[Act] = []
    try:
        with transaction.atomic():
            lock_books()
            earlier = acts_of(key)
            if earlier:
                return earlier
            acts = _posted(rows, who, key, found_allowed, note)
            if only_check:
                raise _Tried
    except _Tried:
        pass
    return acts


def _posted(rows, who, key, found_allowed, note):
    told, faults = read_rows(rows, Known(who))
    if not told and not faults:
        raise NothingGiven(act="catch up")
    acts, short = [], []
    for row in sorted(told, key=lambda row: (row.day, row.number)):
        try:
            with transaction.atomic():
                acts.append(
                    post_row(row, who=who, key=f"{key}:{row.number}", found_allowed=found_allowed, note=note)
                )
        except Refused as refusal:
            faults[row.number] = [str(problem) for problem in refusal.problems]
            short += [problem for problem in refusal.problems if isinstance(problem, NotEnough)]
        except NotYours as refusal:
            faults[row.number] = [refusal.why]
    if faults:
        raise EveningRefused(faults, short)
    return acts


def undo_evening(key, *, who):
    """Takes back every act of an evening that still stands, the last one first; refused whole where one cannot be."""
    with transaction.atomic():
        lock_books()
        standing = [act for act in acts_of(key) if not Act.objects.filter(reverses=act).exists()]
        return [undo(act, who=who, key=f"undo:{act.key}") for act in reversed(standing)]
