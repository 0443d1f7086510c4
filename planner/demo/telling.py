"""How the invented year is told: each act gets its day, its person and a key of its own, the same at every telling.

Takes the keeper, the opening day and a seed; gives a Year, which the seasons (spring, summer, autumn) tell acts with.
Writes nothing itself.
"""

import datetime as dt
from itertools import count

import numpy as np

from apiary.models import Colony, HiveSet, Yard
from inventory import stock
from inventory.gear import Condition
from inventory.ledger import Line

WEAK, FAIR, STRONG = Colony.Strength.WEAK, Colony.Strength.FAIR, Colony.Strength.STRONG


class Year:
    """Days are told as days after the opening; `shed` and `yards` as they are at the opening."""

    def __init__(self, *, who, opened_on, seed):
        self.who, self.opened_on = who, opened_on
        self.random = np.random.default_rng(seed)
        self.numbers = count(1)
        self.shed = Yard.objects.get(is_shed=True)
        self.yards = list(Yard.objects.filter(is_shed=False).order_by("code"))

    def day(self, after):
        return self.opened_on + dt.timedelta(days=after)

    def key(self):
        return f"invented-{self.opened_on:%Y}-{next(self.numbers)}"

    def act(self, act, *, after, **told):
        """One act of the books, so many days after the opening."""
        return act(day=self.day(after), who=self.who, key=self.key(), **told)

    def living(self, after, *, yard=None, hive_set=None, strength=None, new=True):
        """Colonies alive that day, by tag; without `new` those only that were there at the opening."""
        rows = Colony.objects.alive(on=self.day(after)).select_related("yard", "hive_set").order_by("tag")
        rows = rows if yard is None else rows.filter(yard=yard)
        rows = rows if hive_set is None else rows.filter(hive_set__code=hive_set)
        rows = rows if strength is None else rows.filter(strength=strength)
        return list(rows if new else rows.filter(origin=Colony.Origin.OVERWINTERED))

    def room(self, yard, after):
        """Stands of a yard without a colony."""
        return yard.stands - len(self.living(after, yard=yard))

    def hive_set(self, code):
        return HiveSet.objects.get(code=code)


def sound_at(ground):
    """{part's code: sound pieces} by the book now, of a yard's store or a colony."""
    here = stock.on_hand(ground)
    return {gear.part: n for gear, n in here.items() if gear.condition == Condition.SOUND and n > 0}


def all_at(ground):
    """Lines of everything a store has."""
    return [Line(gear.part, n, gear.condition) for gear, n in stock.on_hand(ground).items() if n > 0]
