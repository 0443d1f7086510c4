"""Posting a count: the book made equal to what was counted, in one act, and the draft closed with it.

Takes the Count and the token of the differences that were shown; gives the Act. Count then correct makes book equal
count, on the evening of its day.
"""

from django.db import transaction

from inventory.counting.comparing import compared, token_of
from inventory.errors import BookMoved, CountBelowLater, CountClosed, NotEnough, NothingGiven, Refused, refuse
from inventory.gear import Condition
from inventory.ledger.counts import correct_all
from inventory.ledger.lines import Line
from inventory.ledger.posting import lock_books
from inventory.models import Count, CountLine


def post_count(count, *, who, shown=None):
    """Books every difference. `shown`: refused where the differences are others by now than those that were seen."""
    with transaction.atomic():
        lock_books()
        current = (
            Count.objects.select_for_update(of=("self",)).select_related("location", "act").get(pk=count.pk)
        )
        if current.status == Count.Status.POSTED:
            return current.act
        if current.status == Count.Status.DROPPED:
            raise CountClosed(count=current, status=current.get_status_display())
        rows = compared(current)
        if not rows:
            raise NothingGiven(act="count")
        if shown is not None and shown != token_of(rows):
            raise BookMoved(location=current.location)
        act = _corrected(current, rows, who)
        _close(current, rows, act)
    return act


def _corrected(count, rows, who):
    counts: dict = {}
    for row in rows:
        line = Line(row.part, row.difference.counted, row.condition)
        counts.setdefault(row.location, []).append(line)
    try:
        return correct_all(counts=counts.items(), day=count.day, who=who, key=count.key, note=count.note)
    except Refused as refusal:
        refuse(_in_its_words(problem, rows) for problem in refusal.problems)
        raise


def _in_its_words(problem, rows):
    """A shortage on a later day told as what it is: fewer counted than were taken away since."""
    if not isinstance(problem, NotEnough):
        return problem
    row = next(row for row in rows if row.location == problem.location and _named(row) == str(problem.part))
    return CountBelowLater(
        location=row.location, part=row.name, counted=row.difference.counted, later=problem.day
    )


def _named(row):
    """The gear as a shortage names it."""
    return str(row.part) if row.condition == Condition.SOUND else f"{row.part} ({row.condition})"


def _close(count, rows, act):
    CountLine.objects.filter(count=count).delete()
    CountLine.objects.bulk_create(
        CountLine(
            count=count,
            location=row.location,
            part=row.part,
            condition=row.condition,
            quantity=row.difference.counted,
            booked=row.difference.booked,
        )
        for row in rows
    )
    count.status, count.act = Count.Status.POSTED, act
    count.save(update_fields=["status", "act"])
