"""Colonies that are no more, written down: found dead, lost, sold or united long before anybody told the books.

Takes colonies and what became of them; gives the Act. No gear moves: their hives wait to be worked or salvaged.
"""

from apiary import colonies as bees
from inventory.errors import Refused, refuse
from inventory.yardwork.refusals import NoColony
from inventory.yardwork.whole import together


def end_colonies(*, colonies, why, day, who, key, note=""):
    """All of them ended that day, for the same reason."""

    def work(act_key):
        if not colonies:
            raise NoColony(act="write down")
        problems = []
        for colony in colonies:
            try:
                bees.end(colony, why=why, day=day, who=who, note=note, act_key=act_key)
            except Refused as refusal:
                problems += refusal.problems
        refuse(problems)
        return []

    return together("end", work, day=day, who=who, key=key, note=note)
