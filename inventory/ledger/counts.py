"""A count: makes the book equal what was counted at a place on a day.

Takes counted lines (zero is a count too); gives the Act, with one movement per difference and none where
the book was right. Parts that were not counted are left alone.
"""

from inventory.gear import Reason
from inventory.ledger.balances import balances_from
from inventory.ledger.lines import Line, checked
from inventory.ledger.posting import Entry, post
from inventory.ledger.rules import inside, refuse_unfit, refuse_unstarted
from inventory.locations import outside
from inventory.models import Location


def correct(*, location, counted, day, who, key, note=""):
    """Books the difference between counted and booked, by part and condition, as of the evening of the day."""

    def entries():
        here, ground = inside(location), outside(Location.Kind.CORRECTION)
        refuse_unstarted(here, day)
        lines = checked(counted, act="count", lowest=0)
        books = balances_from(day, {(here, line.part, line.condition) for line in lines})
        found = []
        for line in lines:
            booked = books[here, line.part, line.condition][0][1]
            if line.quantity > booked:
                found.append(Line(line.part, line.quantity - booked, line.condition))
                yield _difference(found[-1], ground, here)
            elif line.quantity < booked:
                less = Line(line.part, booked - line.quantity, line.condition)
                yield _difference(less, here, ground)
        refuse_unfit(found, here)

    return post("correct", entries, day=day, who=who, key=key, note=note)


def _difference(line, source, target):
    return Entry(
        part=line.part,
        quantity=line.quantity,
        condition=line.condition,
        source=source,
        target=target,
        reason=Reason.CORRECTED,
    )
