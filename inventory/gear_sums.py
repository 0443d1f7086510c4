"""Gear by part: where it lies and in which condition, with sums and value, for the gear page.

Takes StockRows; gives one PartRow a part. Changes nothing.
"""

from collections import defaultdict
from dataclasses import dataclass
from decimal import Decimal

from inventory.gear import Condition
from inventory.models import Part
from inventory.pieces import PLACE_OF_KIND


@dataclass(frozen=True, kw_only=True)
class PlaceRow:
    """One part at one place: its pieces by condition."""

    yard: str
    yard_name: str
    on_colonies: bool
    conditions: dict

    @property
    def quantity(self):
        return sum(self.conditions.values())

    @property
    def words(self):
        """40, of them 2 to mend; nothing is added where all are sound."""
        unsound = {c: n for c, n in self.conditions.items() if c != Condition.SOUND}
        if not unsound:
            return ""
        if len(self.conditions) == 1:
            return str(next(iter(unsound)))
        return "of them " + ", ".join(f"{number:,} {condition}" for condition, number in unsound.items())


@dataclass(frozen=True, kw_only=True)
class PartRow:
    """One part everywhere."""

    part: Part
    places: tuple[PlaceRow, ...]

    @property
    def name(self):
        return self.part.name[:1].upper() + self.part.name[1:]

    @property
    def in_stores(self):
        return sum(place.quantity for place in self.places if not place.on_colonies)

    @property
    def on_colonies(self):
        return sum(place.quantity for place in self.places if place.on_colonies)

    @property
    def quantity(self):
        return sum(place.quantity for place in self.places)

    @property
    def value(self):
        return Decimal(self.quantity * self.part.list_price_cents) / 100

    @property
    def unsound(self):
        """2 to mend, 10 held back."""
        sums: dict[Condition, int] = defaultdict(int)
        for place in self.places:
            for condition, number in place.conditions.items():
                sums[condition] += number
        return ", ".join(f"{sums[c]:,} {c}" for c in Condition if c != Condition.SOUND and sums[c])


def by_part(stock, parts):
    """PartRows of the parts among these, boxes first, in the order a hive is built."""
    places: dict[str, dict[tuple, dict]] = defaultdict(lambda: defaultdict(dict))
    for row in stock:
        places[row.part][row.on_colonies, row.yard_name, row.yard][row.condition] = row.quantity
    rows = [
        PartRow(
            part=part,
            places=tuple(
                PlaceRow(yard=yard, yard_name=name, on_colonies=on_bees, conditions=conditions)
                for (on_bees, name, yard), conditions in sorted(places[part.code].items())
            ),
        )
        for part in parts
        if part.code in places
    ]
    return sorted(rows, key=lambda row: (PLACE_OF_KIND[row.part.kind], row.part.code))


@dataclass(frozen=True, kw_only=True)
class GearSums:
    """Sums over PartRows: pieces (feed and the like left out, they are counted in other units) and value."""

    in_stores: int
    on_colonies: int
    value: Decimal

    @property
    def pieces(self):
        return self.in_stores + self.on_colonies


def sums_of(rows):
    pieces = [row for row in rows if row.part.unit == "piece"]
    return GearSums(
        in_stores=sum(row.in_stores for row in pieces),
        on_colonies=sum(row.on_colonies for row in pieces),
        value=sum((row.value for row in rows), Decimal(0)),
    )
