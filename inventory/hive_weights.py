"""What a hive weighs on the truck, its gear by tare and with every drawn comb full of honey, and the room it takes.

Takes colonies; gives pounds and cubic feet for each, as the books have them now. The true weight lies between, bees
and brood included.
"""

import math
from dataclasses import dataclass
from decimal import ROUND_UP, Decimal

from inventory.gear import Condition
from inventory.load_sums import comb_weights, honey_lb, piece_of
from inventory.models import Holding
from inventory.truckload import load_of

TENTH = Decimal("0.1")


@dataclass(frozen=True, kw_only=True)
class HiveWeight:
    """Whole pounds and tenths of a cubic foot, rounded up; the room between stacks is counted in."""

    empty_lb: int = 0
    full_lb: int = 0
    cubic_ft: Decimal = Decimal(0)


def hive_weights(colonies):
    """{colony's id: HiveWeight}: one question for all."""
    combs = comb_weights()
    empty: dict = {}
    honey: dict = {}
    pieces: dict = {}
    rows = Holding.objects.filter(location__colony__in=colonies, quantity__gt=0)
    for row in rows.select_related("part", "location"):
        pk = row.location.colony_id
        empty[pk] = empty.get(pk, 0) + row.part.tare_lb * row.quantity
        pieces.setdefault(pk, []).append((piece_of(row.part), row.quantity))
        if row.condition == Condition.SOUND:
            honey[pk] = honey.get(pk, 0) + honey_lb(row.part, combs) * row.quantity
    return {
        colony.pk: HiveWeight(
            empty_lb=math.ceil(empty.get(colony.pk, 0)),
            full_lb=math.ceil(empty.get(colony.pk, 0) + honey.get(colony.pk, 0)),
            cubic_ft=load_of(pieces.get(colony.pk, [])).cubic_ft.quantize(TENTH, ROUND_UP),
        )
        for colony in colonies
    }
