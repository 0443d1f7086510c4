"""Colonies taken to another yard, hive and all: a colony's gear stays on it, so no gear moves by the book.

Takes colonies and the yard they go to; gives the Act, one for the whole load.
"""

from apiary import colonies as bees
from inventory.errors import Refused, refuse
from inventory.locations import place_of
from inventory.yardwork.refusals import NoColony
from inventory.yardwork.sharing import under_case
from inventory.yardwork.whole import together


def move_colonies(*, colonies, yard, day, who, key, note=""):
    """All of them go in one load; refused, with every reason, where one cannot, as under an open case."""

    def work(act_key):
        if not colonies:
            raise NoColony(act="move")
        problems = [*under_case([place_of(colony) for colony in colonies], "moved to another yard")]
        for colony in colonies:
            try:
                bees.move(colony, yard=yard, day=day, who=who, note=note, act_key=act_key)
            except Refused as refusal:
                problems += refusal.problems
        refuse(problems)
        return []

    return together("move colonies", work, day=day, who=who, key=key, note=note)
