"""A load of parts against the keeper's truck.

Takes parts with how many of each, and how many of the boxes are full of honey; gives the load, the truck, and what
is over. Changes nothing.
"""

from dataclasses import dataclass
from decimal import Decimal

from apiary.models import Keeper
from inventory.gear import Comb, CombUse, Kind
from inventory.load_line import load_line
from inventory.models import Part
from inventory.truckload import SPACING, Load, Piece, load_of


@dataclass(frozen=True, kw_only=True)
class Truck:
    """What the keeper's truck may carry and what its bed holds."""

    lb: int
    cubic_ft: int


def truck():
    """As the keeper told it; the usual figures where there is no keeper yet."""
    told = Keeper.objects.values("truck_lb", "truck_cubic_ft").first()
    return Truck(**{name: _figure(told, name) for name in ("lb", "cubic_ft")})


def _figure(told, name):
    return (told and told[f"truck_{name}"]) or getattr(Keeper(), f"truck_{name}")


def piece_of(part):
    """A part as a load sees it."""
    return Piece(
        kind=Kind(part.kind),
        lb=part.tare_lb,
        depth=part.depth,
        width=part.width,
        flat=part.flat,
        unit=part.unit,
        length_in=part.length_in,
        width_in=part.width_in,
        height_in=part.height_in,
    )


def comb_weights():
    """{depth: lb of one drawn comb}."""
    rows = Part.objects.filter(kind=Kind.FRAME, comb=Comb.DRAWN, comb_use=CombUse.HONEY, treated=False)
    return dict(rows.values_list("depth", "tare_lb"))


@dataclass(frozen=True, kw_only=True)
class Weighed:
    """A load beside the truck, in words and as two lines."""

    load: Load
    truck: Truck

    @property
    def lines(self):
        return [
            load_line(self.load.lb, self.truck.lb),
            load_line(self.load.cubic_ft, self.truck.cubic_ft, "cubic ft"),
        ]

    @property
    def trips(self):
        return self.load.trips(self.truck.lb, self.truck.cubic_ft)

    @property
    def over(self):
        return any(line.over for line in self.lines)

    @property
    def trips_words(self):
        return "1 trip" if self.trips == 1 else f"{self.trips:,} trips"

    @property
    def sentence(self):
        """What is over, and how many trips it would be."""
        over = [
            f"{line.amount:,} {line.unit} where your truck takes {line.limit_amount:,}"
            for line in self.lines
            if line.over
        ]
        return f"This load is {' and '.join(over)}: that is {self.trips_words}."

    @property
    def spacing(self):
        """Per cent added to the gear's own room."""
        return int((SPACING - 1) * 100)


def weigh(parts, *, full=()):
    """The load of [(part, how many)], of which [(part, how many)] in `full` are boxes full of honey."""
    combs = comb_weights() if full else {}
    honey = sum((honey_lb(part, combs) * number for part, number in full), Decimal(0))
    return Weighed(load=load_of([(piece_of(part), n) for part, n in parts], honey_lb=honey), truck=truck())


def honey_lb(part, combs):
    """Honey in one such box that is full; `combs` as comb_weights gives them."""
    return piece_of(part).honey_lb(combs.get(part.depth, Decimal(0)))
