"""The proof of the books: re-derives every balance from the movements and checks the seal, row by row.

Takes nothing but the tables; gives a Proof with every fault and note in words, the same for the same books
(no time of day, no path). Writes nothing.
"""

import datetime as dt
from collections import Counter, defaultdict
from dataclasses import dataclass

from django.db import transaction

from apiary.errors import told
from apiary.models import Colony
from inventory.ledger.digest import digest_of
from inventory.models import Act, BookSeal, Holding, Location, Movement, Order, Part
from inventory.orders import derived_status

LONG = dt.timedelta(days=30)  # gear of an ended colony that waits longer gets a note


@dataclass(frozen=True, kw_only=True)
class Proof:
    """What the check found. `line` is the one sentence to show where there is no fault."""

    faults: tuple[str, ...]
    notes: tuple[str, ...]
    line: str


@dataclass(frozen=True, kw_only=True)
class _Books:
    """All rows in the order of the chain, with their acts, ends and parts at hand."""

    rows: list
    acts: dict
    locations: dict
    parts: dict


@transaction.atomic
def prove():
    """Checks all of the books, while no act is being written."""
    seal = BookSeal.objects.select_for_update().filter(pk=1).first()
    books = _read()
    derived, lows = _derived(books)
    faults = [
        *_chain_faults(books, seal),
        *_row_faults(books),
        *_below_zero(books, lows),
        *_holding_faults(books, derived),
        *_conservation_faults(books),
        *_reversal_faults(books),
        *_order_faults(),
    ]
    return Proof(faults=tuple(faults), notes=tuple(_notes(derived, books)), line=_line(books, derived))


def _read():
    acts = Act.objects.in_bulk()
    locations = {row.pk: row for row in Location.objects.select_related("yard", "colony")}
    parts = Part.objects.in_bulk()
    rows = list(Movement.objects.order_by("id"))
    return _Books(rows=rows, acts=acts, locations=locations, parts=parts)


def _whole(books, row):
    """True where the act, part and both ends of a row are there; then they are set on it."""
    act, part = books.acts.get(row.act_id), books.parts.get(row.part_id)
    source, target = books.locations.get(row.source_id), books.locations.get(row.target_id)
    if None in (act, part, source, target):
        return False
    row.act, row.part, row.source, row.target = act, part, source, target
    return True


def _chain_faults(books, seal):
    """The chain of digests from the first row to the seal."""
    before = ""
    for row in books.rows:
        if not _whole(books, row):
            yield f"Movement {row.pk} names an act, part or place that is not in the books any more."
        elif digest_of(row, before) != row.digest:
            yield (
                f"Movement {row.pk} ({_told(row)}) does not carry the digest it should: it or its act was edited, "
                "it was put in, or a row before it was removed behind the books' back."
            )
        before = row.digest
    length, head = (seal.length, seal.head) if seal else (0, "")
    if length != len(books.rows):
        yield f"The seal counts {length} movements, the books hold {len(books.rows)}."
    if head != before:
        yield "The seal does not fit the last movement: rows were cut from the end, put there, or the seal was edited."


def _row_faults(books):
    for row in books.rows:
        if row.quantity < 1:
            yield f"Movement {row.pk} moves {row.quantity} pieces: a movement moves at least one."
        if row.source_id == row.target_id:
            yield f"Movement {row.pk} has the same place at both ends."
        if row.act_id in books.acts and books.acts[row.act_id].day != row.day:
            yield f"Movement {row.pk} is dated {told(row.day)}, its act {told(books.acts[row.act_id].day)}."


def _derived(books):
    """({key: balance}, {key: (first day below zero, lowest balance)}) of inside places, key by ids."""
    changes: dict = defaultdict(lambda: defaultdict(int))
    for row in books.rows:
        for end, sign in ((row.source_id, -1), (row.target_id, 1)):
            location = books.locations.get(end)
            if location is not None and location.is_inside:
                changes[end, row.part_id, row.condition][row.day] += sign * row.quantity
    derived: dict[tuple, int] = {}
    lows: dict[tuple, tuple] = {}
    for key, days in changes.items():
        balance = 0
        for day in sorted(days):
            balance += days[day]
            if balance < 0:
                first, lowest = lows.get(key, (day, 0))
                lows[key] = (first, min(lowest, balance))
        derived[key] = balance
    return derived, lows


def _below_zero(books, lows):
    for key, (day, lowest) in sorted(lows.items()):
        yield f"{_named(books, key)}: below zero from {told(day)} on, {lowest} at the lowest."


def _holding_faults(books, derived):
    held = {
        (row.location_id, row.part_id, row.condition): row.quantity for row in Holding.objects.order_by("id")
    }
    for key in sorted(set(held) | set(derived)):
        if held.get(key, 0) != derived.get(key, 0):
            yield (
                f"{_named(books, key)}: the balance kept is {held.get(key, 0)}, "
                f"the movements give {derived.get(key, 0)}."
            )


def _conservation_faults(books):
    """Of each part: what the balances hold inside is what came in from outside less what went out."""
    came: Counter = Counter()
    for row in books.rows:
        for end, sign in ((row.source_id, 1), (row.target_id, -1)):
            location = books.locations.get(end)
            if location is not None and not location.is_inside:
                came[row.part_id] += sign * row.quantity
    inside: Counter = Counter()
    for part, quantity in Holding.objects.values_list("part_id", "quantity"):
        inside[part] += quantity
    for part in sorted(set(came) | set(inside)):
        if came[part] != inside[part]:
            name = books.parts.get(part, f"part {part}")
            yield f"{name}: {came[part]} came in and did not go out, but stores and colonies hold {inside[part]}."


def _reversal_faults(books):
    """A reversal puts back exactly what its act moved, on its day or later, and reverses no reversal."""
    moved: dict = defaultdict(Counter)
    for row in books.rows:
        gear = (row.part_id, row.condition, row.order_line_id, row.found)
        moved[row.act_id][(*gear, row.source_id, row.target_id)] += row.quantity
    for act in (books.acts[pk] for pk in sorted(books.acts)):
        first = books.acts.get(act.reverses_id)
        if act.reverses_id is None:
            continue
        if first is None or first.reverses_id is not None:
            yield f"Act {act.pk} reverses act {act.reverses_id}, which is not an act that can be reversed."
            continue
        back = Counter({(*key[:4], key[5], key[4]): n for key, n in moved[first.pk].items()})
        if moved[act.pk] != back:
            yield f"Act {act.pk} does not put back what act {first.pk} ({first}) moved."
        if act.day < first.day:
            yield f"Act {act.pk} reverses act {first.pk} on a day before it."


def _order_faults():
    for order in Order.objects.select_related("supplier").order_by("id"):
        status = derived_status(order)
        if status != order.status:
            yield (
                f"Order {order.reference} says {order.get_status_display()}, "
                f"its movements say {Order.Status(status).label}."
            )


def _notes(derived, books):
    """Colonies that ended long before the last act and still hold gear by the book."""
    if not books.acts:
        return
    last = max(act.day for act in books.acts.values())
    waiting: Counter = Counter()
    for (location, _, _), quantity in derived.items():
        if books.locations[location].colony_id:
            waiting[books.locations[location].colony_id] += quantity
    ended = Colony.objects.filter(pk__in=waiting, ended_on__lt=last - LONG).order_by("tag")
    for colony in ended:
        if waiting[colony.pk]:
            yield (
                f"Note: colony {colony} ended on {told(colony.ended_on)} and {waiting[colony.pk]} pieces are "
                "still booked on it. Salvage them, or count what is there."
            )


def _line(books, derived):
    head = books.rows[-1].digest[:12] if books.rows else "none yet"
    pieces = sum(derived.values())
    places = len({key[0] for key, quantity in derived.items() if quantity})
    return (
        f"The books are right: {_counted(len(books.rows), 'movement')} of {_counted(len(books.acts), 'act')}, "
        f"{_counted(pieces, 'piece')} in {_counted(places, 'place')}, every balance re-derived, nothing below zero on any day, seal {head}."
    )


def _counted(number, word):
    return f"{number:,} {word}" if number == 1 else f"{number:,} {word}s"


def _named(books, key):
    location, part, condition = key
    return (
        f"{books.locations.get(location, f'place {location}')}, "
        f"{books.parts.get(part, f'part {part}')} ({condition})"
    )


def _told(row):
    return f"{told(row.day)}: {row.quantity} {row.part} from {row.source} to {row.target}"
