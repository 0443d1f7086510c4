"""Two colonies made one: the bees of the first live on in the hive of the second.

Takes the colony that is no more, the one that stays, and the pieces that go on it; gives the Act. All else the book
has on the first goes into a store.
"""

from apiary import colonies
from inventory.errors import refuse
from inventory.gear import Reason
from inventory.ledger.lines import checked
from inventory.ledger.rules import colony_place, refuse_not_living, refuse_unfit, store
from inventory.yardwork.refusals import ApartInYards, UnitedWithItself
from inventory.yardwork.sharing import booked_at, carried, rest, suspected, taken, worked_later
from inventory.yardwork.whole import together


def unite(*, colony, into, goes_on, store_at, day, who, key, found_allowed=True, note=""):
    """`goes_on`: Lines of what is set on the hive that stays, with its bees; none: bees alone are shaken in."""

    def work(act_key):
        here, there, home = colony_place(colony), colony_place(into), store(store_at)
        if here == there:
            raise UnitedWithItself(colony=here.colony)
        for place in (here, there):
            refuse_not_living(place, day)
        _refuse_apart(here.colony, there.colony, day)
        refuse([*suspected([here, there], "united"), *worked_later([here], day, "united")])
        lines = checked(goes_on, act="unite") if goes_on else []
        refuse_unfit(lines, there)
        colonies.unite(here.colony, into=there.colony, day=day, who=who, note=note, act_key=act_key)
        booked = booked_at([here], day)
        on = carried(taken(lines, booked, beyond=here), there, Reason.PLACED)
        return [*on, *carried(rest(booked), home, Reason.TAKEN_OFF)]

    return together("unite", work, day=day, who=who, key=key, note=note, found_allowed=found_allowed)


def _refuse_apart(colony, into, day):
    yard, other = colonies.yard_on(colony, day), colonies.yard_on(into, day)
    if yard != other:
        raise ApartInYards(colony=colony, yard=yard, into=into, other_yard=other, day=day)
