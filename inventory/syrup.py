"""Syrup in gallons and the sugar in it. Pure: no table, no clock.

Takes what is fed and how much; gives lb of sugar from the density of sucrose solutions at 20 °C. Ratios are parts
of sugar to parts of water by weight: by volume, as many mix it, a gallon holds less sugar.
"""

from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal

LB_A_GALLON = Decimal("8.3454")  # of a liquid of 1 g/mL
QUARTS_A_GALLON = 4


@dataclass(frozen=True, kw_only=True)
class Ration:
    """One kind of feed: the part it takes from the store, and how much of it a quart or lb takes."""

    code: str
    part: str
    words: str
    unit: str  # what is told: gal (in steps of a quart) or lb
    density: Decimal = Decimal(0)  # g/mL, of syrup
    sugar_share: Decimal = Decimal(1)  # of its weight
    caution: str = ""

    @property
    def is_syrup(self):
        return self.unit == "gal"

    @property
    def lb_each(self):
        """lb of its part in one gallon, or in one lb."""
        return self.density * LB_A_GALLON * self.sugar_share if self.is_syrup else Decimal(1)

    @property
    def lb_a_step(self):
        """lb of its part in one quart of syrup, or in one lb."""
        return self.lb_each / QUARTS_A_GALLON if self.is_syrup else self.lb_each

    def lb(self, quantity):
        """Whole lb of its part in so many quarts of syrup (or lb of anything else)."""
        return int((quantity * self.lb_a_step).quantize(Decimal(1), ROUND_HALF_UP))

    def amount(self, quantity):
        """So many quarts or lb in words: 2.5 gal, 10 lb."""
        number = Decimal(quantity) / QUARTS_A_GALLON if self.is_syrup else Decimal(quantity)
        return f"{number.normalize():f} {self.unit}"


RATIONS = {
    ration.code: ration
    for ration in (
        Ration(
            code="syrup-1-1",
            part="sugar",
            words="Syrup 1:1",
            unit="gal",
            density=Decimal("1.2296"),  # CRC Handbook of Chemistry and Physics: 50 % sucrose
            sugar_share=Decimal(1) / 2,
            caution="1:1 is spring feed: it starts brood and is not for winter stores, it leaves bees too much water "
            "to drive off when nights are cold.",
        ),
        Ration(
            code="syrup-2-1",
            part="sugar",
            words="Syrup 2:1",
            unit="gal",
            density=Decimal("1.3265"),  # NBS Circular 440, from memory: 66.7 % sucrose
            sugar_share=Decimal(2) / 3,
            caution="2:1 is for autumn stores, given early enough to be capped: in the north by mid October.",
        ),
        Ration(
            code="sugar",
            part="sugar",
            words="Dry sugar",
            unit="lb",
            caution="Dry sugar is a stopgap in the cold: bees need water to take it, and it builds no stores.",
        ),
        Ration(code="patty", part="patty", words="Protein patties", unit="lb"),
    )
}
