"""The proof of the books: re-derives every balance from the movements and checks the seal, row by row.

Takes nothing but the tables; gives a Proof with every fault and note in words, the same for the same books
(no time of day, no path). Reads the movements twice in a stream, in the order of the chain and in that of the days,
and holds nobody up. Writes nothing.
"""

import datetime as dt
from collections import Counter
from dataclasses import dataclass
from itertools import islice

from apiary.errors import told
from apiary.models import Colony
from inventory.models import Act, BookSeal, Location, Order, Part
from inventory.orders import derived_status
from inventory.proof.acts import Acts
from inventory.proof.bees import bees_faults
from inventory.proof.chain import Chain
from inventory.proof.days import Days
from inventory.proof.seal import UNMARKED, seal_faults
from inventory.standstill import standing_still

LONG = dt.timedelta(days=30)  # gear of an ended colony that waits longer gets a note
MANY = 1000  # faults told one by one


@dataclass(frozen=True, kw_only=True)
class Proof:
    """What the check found. `line` is the one sentence to show where there is no fault."""

    faults: tuple[str, ...]
    notes: tuple[str, ...]
    line: str

    @property
    def is_only_unmarked(self):
        return self.faults == (UNMARKED,)


def prove(*, noted=None):
    """Checks all of the books as they stand. `noted`: (movements, seal) of an earlier line, held against them."""
    with standing_still():
        seal = BookSeal.objects.filter(pk=1).first()
        locations = {row.pk: row for row in Location.objects.select_related("yard", "colony")}
        parts = Part.objects.in_bulk()
        chain = Chain(locations, parts, noted=noted)
        days = Days(locations, parts)
        faults = _first_of(_faults(chain, Acts(), days, seal))
        notes = tuple(_notes(days.balances, locations))
        line = _line(chain, days)
    return Proof(faults=faults, notes=notes, line=line)


def _faults(chain, acts, days, seal):
    yield from chain.faults()
    yield from acts.faults()
    found = {"length": chain.length, "head": chain.head, "acts": acts.length, "act_head": acts.head}
    yield from seal_faults(seal, **found)
    yield from days.faults()
    yield from chain.conservation_faults()
    yield from chain.reversal_faults()
    yield from _order_faults()
    yield from bees_faults()


def _first_of(faults):
    """The first of them word for word, the rest counted."""
    shown = tuple(islice(faults, MANY))
    rest = sum(1 for _ in faults)
    return (*shown, f"And {_counted(rest, 'fault')} more.") if rest else shown


def _order_faults():
    for order in Order.objects.select_related("supplier").order_by("id"):
        status = derived_status(order)
        if status != order.status:
            yield (
                f"Order {order.reference} says {order.get_status_display()}, "
                f"its movements say {Order.Status(status).label}."
            )


def _notes(balances, locations):
    """Colonies that ended long before the last act and still hold gear by the book."""
    last = Act.objects.order_by("-day").values_list("day", flat=True).first()
    if last is None:
        return
    waiting: Counter = Counter()
    for location, gears in balances.items():
        if locations[location].colony_id:
            waiting[locations[location].colony_id] += sum(gears.values())
    ended = Colony.objects.filter(ended_on__lt=last - LONG).order_by("tag")
    for colony in ended:
        if waiting[colony.pk]:
            yield (
                f"Note: colony {colony} ended on {told(colony.ended_on)} and {waiting[colony.pk]} pieces are "
                "still booked on it. Salvage them, or count what is there."
            )


def _line(chain, days):
    head = chain.head[:12] or "none yet"
    pieces = sum(sum(gears.values()) for gears in days.balances.values())
    return (
        f"The books are right: {_counted(chain.length, 'movement')} of {_counted(Act.objects.count(), 'act')}, "
        f"{_counted(pieces, 'piece')} in {_counted(len(days.balances), 'place')}, every balance re-derived, "
        f"nothing below zero on any day, seal {head}."
    )


def _counted(number, word):
    return f"{number:,} {word}" if number == 1 else f"{number:,} {word}s"
