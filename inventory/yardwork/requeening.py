"""New queens: one colony or many requeened at once, as one act of the books. No gear moves.

Takes colonies and where their queens are from; gives the Act.
"""

from apiary import colonies as bees
from inventory.errors import Refused, refuse
from inventory.yardwork.refusals import NoColony
from inventory.yardwork.whole import together


def requeen(*, colonies, queen, day, who, key, note=""):
    """All of them have a queen of the same origin from that day on."""

    def work(act_key):
        if not colonies:
            raise NoColony(act="requeen")
        problems = []
        for colony in colonies:
            try:
                bees.requeen(colony, queen=queen, day=day, who=who, note=note, act_key=act_key)
            except Refused as refusal:
                problems += refusal.problems
        refuse(problems)
        return []

    return together("requeen", work, day=day, who=who, key=key, note=note)
