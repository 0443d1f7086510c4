"""A count: makes the book equal what was counted at a place on a day.

Takes counted lines (zero is a count too) of one place or of several; gives the Act, with one movement per difference
and none where the book was right. Parts that were not counted are left alone. Held-back pieces are never let go by a
count: fewer of them and more free ones of the same part at the same place are refused.
"""

from inventory.deadouts.holds import why_held
from inventory.errors import HeldCountedFree, refuse
from inventory.gear import Condition, Reason
from inventory.ledger.balances import balances_from
from inventory.ledger.lines import Line, checked, parts_by_code
from inventory.ledger.posting import Entry, post
from inventory.ledger.rules import inside, refuse_unfit, refuse_unstarted
from inventory.locations import outside
from inventory.models import Location


def correct(*, location, counted, day, who, key, note=""):
    """Books the difference between counted and booked, by part and condition, as of the evening of the day."""
    return correct_all(counts=[(location, counted)], day=day, who=who, key=key, note=note)


def correct_all(*, counts, day, who, key, note=""):
    """The count of several places in one act: `counts` gives (store or colony, counted lines) pairs."""

    def entries():
        catalogue, ground, told = parts_by_code(), outside(Location.Kind.CORRECTION), {}
        for place, counted in counts:
            here = inside(place)
            refuse_unstarted(here, day)
            told[here] = checked(counted, act="count", lowest=0, catalogue=catalogue)
        keys = {(here, line.part, line.condition) for here, lines in told.items() for line in lines}
        books = balances_from(day, keys)
        for here, lines in told.items():
            booked = {line: books[here, line.part, line.condition][0][1] for line in lines}
            yield from _differences(here, ground, booked)

    return post("correct", entries, day=day, who=who, key=key, note=note)


def _differences(here, ground, booked):
    more: list = [
        Line(line.part, line.quantity - n, line.condition) for line, n in booked.items() if line.quantity > n
    ]
    less: list = [
        Line(line.part, n - line.quantity, line.condition) for line, n in booked.items() if line.quantity < n
    ]
    refuse_unfit(more, here)
    refuse(_let_go(more, less, here))
    for lines, source, target in ((more, ground, here), (less, here, ground)):
        for line in lines:
            yield Entry(
                part=line.part,
                quantity=line.quantity,
                condition=line.condition,
                source=source,
                target=target,
                reason=Reason.CORRECTED,
            )


def _let_go(more, less, here):
    """A refusal for each part of which fewer held-back pieces and more free ones were counted."""
    free: dict = {}
    for line in more:
        if line.condition != Condition.HELD:
            free[line.part] = free.get(line.part, 0) + line.quantity
    for line in less:
        if line.condition == Condition.HELD and line.part in free:
            counted = {"fewer": line.quantity, "more": free[line.part]}
            yield HeldCountedFree(part=line.part, location=here, why=why_held(here, line.part), **counted)
