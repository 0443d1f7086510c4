"""Evenings kept: what lay where by the books on the evening of a day, in time that does not grow with the books.

Takes a day; gives balances from the nearest evening kept and the movements between. The act's own transaction keeps
them true, back-dated or not, and keeps one more for each STEP movements. Writes Evening only.
"""

import datetime as dt
from dataclasses import dataclass

from django.db import connection
from django.db.models import Count

from inventory.models import BookSeal, Evening, Holding, Location, Movement

STEP = 10_000  # movements from one evening kept to the next; at most half of them lie between a day and the nearer one

CHUNK = 5000


@dataclass(frozen=True, kw_only=True)
class Gap:
    """Movements dated after the evening kept of the day `since` up to that of `until`: `length` of them after `before`.

    `since` None: from the first movement on; `until` None: to the present, which Holding keeps.
    """

    since: object
    until: object
    before: int
    length: int


def gap_around(day):
    """The gap in which the movements of a day lie."""
    days = Evening.objects.values_list("day", "length")
    since, before = days.filter(day__lt=day).order_by("-day").first() or (None, 0)
    until, after = days.filter(day__gte=day).order_by("day").first() or (None, None)
    if after is None:
        after = BookSeal.objects.values_list("length", flat=True).first() or 0
    return Gap(since=since, until=until, before=before, length=after - before)


def balances_on(day):
    """{location's id: {gear: pieces}} on the evening of a day; nothing that is zero. A gear reads as in gear_key."""
    gap = gap_around(day)
    since = _dated(gap.since, day)
    nearer = gap.length // 2 if gap.until else max(gap.length // 2, STEP)  # the present is dearer to read
    if since.count() <= nearer:
        balances = _kept(gap.since)
        _move(balances, since)
    else:
        balances = _kept(gap.until) if gap.until else present()
        _move(balances, _dated(day, gap.until), -1)
    return balances


def present(locations=None):
    """The same by all of the books, of some locations (ids) or all."""
    balances: dict[int, dict[str, int]] = {}
    held = Holding.objects.exclude(quantity=0).order_by()
    held = held if locations is None else held.filter(location__in=list(locations))
    for location, part, condition, quantity in plain_rows(
        held.values_list("location_id", "part_id", "condition", "quantity")
    ):
        balances.setdefault(location, {})[f"{part} {condition}"] = quantity
    return balances


def gear_key(part, condition):
    """A gear as balances name it: the part's id and the condition."""
    return f"{part} {condition}"


def add(balances, location, gear, change):
    """Adds to one balance; what is zero is left out."""
    gears = balances.setdefault(location, {})
    gears[gear] = gears.get(gear, 0) + change
    if not gears[gear]:
        del gears[gear]
        if not gears:
            del balances[location]


def carry(day, changes, *, rows):
    """An act of so many rows on a day: into the evenings kept since then go its changes, {key: pieces}."""
    for evening in Evening.objects.filter(day__gte=day):
        balances = _balances(evening)
        for (location, part, condition), change in changes.items():
            add(balances, location.pk, gear_key(part.pk, condition), change)
        evening.balances, evening.length = balances, evening.length + rows
        evening.save(update_fields=["balances", "length"])


def keep_more(day):
    """Keeps evenings between movements around a day, where STEP twice over lie there. The last day is kept by Holding."""
    gap = gap_around(day)
    if gap.length < 2 * STEP:
        return
    balances, since, length = _kept(gap.since), gap.since, gap.before
    for until, rows in _cuts(gap):
        _move(balances, _dated(since, until))
        length += rows
        Evening.objects.create(day=until, length=length, balances=balances)
        since = until


def keep_again():
    """Drops every evening kept and works them out anew from the movements."""
    Evening.objects.all().delete()
    keep_more(dt.date.max)


def _cuts(gap):
    """(day, movements since the cut before) wherever STEP have come together, none on the last day of the gap."""
    days = _dated(gap.since, gap.until).order_by("day").values_list("day").annotate(rows=Count("pk"))
    last, rows = None, 0
    for day, count in days:
        if rows >= STEP:
            yield last, rows
            rows = 0
        last, rows = day, rows + count


def _dated(since, until):
    """Movements dated after one day, up to another; None is no bound."""
    rows = Movement.objects.order_by()
    rows = rows.filter(day__gt=since) if since else rows
    return rows.filter(day__lte=until) if until else rows


def _move(balances, movements, sign=1):
    outside = set(Location.objects.exclude(kind__in=Location.INSIDE).values_list("pk", flat=True))
    fields = ("source_id", "target_id", "part_id", "condition", "quantity")
    for source, target, part, condition, quantity in plain_rows(movements.values_list(*fields)):
        gear = f"{part} {condition}"
        if source not in outside:
            add(balances, source, gear, -sign * quantity)
        if target not in outside:
            add(balances, target, gear, sign * quantity)


def plain_rows(rows):
    """Rows of numbers and words as the database gives them: many at a time, nothing to convert."""
    sql, values = rows.query.sql_with_params()
    with connection.cursor() as cursor:
        cursor.execute(sql, values)
        while chunk := cursor.fetchmany(CHUNK):
            yield from chunk


def _kept(day):
    """The balances of an evening kept; before the first there is nothing."""
    return _balances(Evening.objects.get(day=day)) if day else {}


def _balances(evening):
    return {int(location): gears for location, gears in evening.balances.items()}
