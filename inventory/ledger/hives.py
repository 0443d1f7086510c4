"""Many colonies of one act looked at together: as they are now, kept until the act is written.

Takes colonies and the day; gives {key: colony}, or raises a refusal for each that does not live on the day.
"""

from apiary.models import Colony
from inventory.errors import Refused, refuse
from inventory.ledger.rules import refuse_not_living
from inventory.models import Location


def living(colonies, day):
    """The colonies as they are now, by key; every one that had not started or had ended by the evening is told."""
    keys = [colony.pk for colony in colonies]
    rows = Colony.objects.select_for_update(of=("self",)).select_related("hive_set", "yard").in_bulk(keys)
    problems: list[Refused] = []
    for key in dict.fromkeys(keys):
        try:
            refuse_not_living(Location(kind=Location.Kind.COLONY, colony=rows[key]), day)
        except Refused as problem:
            problems.append(problem)
    refuse(problems)
    return rows
