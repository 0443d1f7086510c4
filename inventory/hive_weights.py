"""What a hive weighs on the truck: its gear by tare, and the same with every drawn comb full of honey.

Takes colonies; gives pounds for each, as the books have them now. The truth lies between, bees and brood included.
"""

import math
from dataclasses import dataclass

from inventory.gear import Condition
from inventory.load_sums import comb_weights, honey_lb
from inventory.models import Holding


@dataclass(frozen=True, kw_only=True)
class HiveWeight:
    """Whole pounds, rounded up."""

    empty_lb: int = 0
    full_lb: int = 0


def hive_weights(colonies):
    """{colony's id: HiveWeight}: one question for all."""
    combs = comb_weights()
    empty: dict = {}
    honey: dict = {}
    rows = Holding.objects.filter(location__colony__in=colonies, quantity__gt=0)
    for row in rows.select_related("part", "location"):
        pk = row.location.colony_id
        empty[pk] = empty.get(pk, 0) + row.part.tare_lb * row.quantity
        if row.condition == Condition.SOUND:
            honey[pk] = honey.get(pk, 0) + honey_lb(row.part, combs) * row.quantity
    return {
        colony.pk: HiveWeight(
            empty_lb=math.ceil(empty.get(colony.pk, 0)),
            full_lb=math.ceil(empty.get(colony.pk, 0) + honey.get(colony.pk, 0)),
        )
        for colony in colonies
    }
