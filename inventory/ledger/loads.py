"""A load: gear of one store hauled in one trip to the drop-offs of one yard or several.

Takes drops (yard, lines); gives the Act. What the truck may carry is the page's business: the books take any load,
two trips are two acts or one as the keeper likes.
"""

from inventory.errors import NothingGiven, Refused, SamePlace, refuse
from inventory.gear import Reason
from inventory.ledger.lines import checked, parts_by_code
from inventory.ledger.posting import Entry, post
from inventory.ledger.rules import store


def haul(*, source, drops, day, who, key, found_allowed=False, note=""):
    """From one store to others. Drops of no line are passed over; all that is wrong is told together."""

    def entries():
        here, catalogue = store(source), parts_by_code()
        problems: list[Refused] = []
        entries = []
        for ground, lines in drops:
            lines = list(lines)
            if not lines:
                continue
            try:
                entries += _dropped(here, store(ground), checked(lines, act="haul", catalogue=catalogue))
            except Refused as problem:
                problems += problem.problems
        refuse(problems)
        if not entries:
            raise NothingGiven(act="haul")
        return entries

    return post("haul", entries, day=day, who=who, key=key, note=note, found_allowed=found_allowed)


def _dropped(here, there, lines):
    if here == there:
        raise SamePlace(location=here)
    return [
        Entry(
            part=line.part,
            quantity=line.quantity,
            condition=line.condition,
            source=here,
            target=there,
            reason=Reason.MOVED,
        )
        for line in lines
    ]
