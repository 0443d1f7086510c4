"""How long combs are frozen against wax moth, by the coldness of the freezer. Pure.

Takes a temperature in Celsius or Fahrenheit; gives hours, counted from when the core of the comb is cold, or None
where it is too warm to rely on. Between two published temperatures the time of the warmer one holds: colder is never
longer, and never shorter than published. Kills wax moth in all stages; never foulbrood.
Source: Charrière and Imdorf 1999, as printed in the BEEBOOK volume II, wax moth, 5.8.1.
"""

from decimal import Decimal

SCHEDULE = (  # degrees Celsius, hours; the coldest first
    (Decimal(-15), Decimal(2)),
    (Decimal(-12), Decimal(3)),
    (Decimal(-7), Decimal("4.5")),
)
WARMEST = SCHEDULE[-1][0]
CELSIUS, FAHRENHEIT = "C", "F"
UNITS = (CELSIUS, FAHRENHEIT)
COLDEST_BELIEVED = Decimal(-100)  # Celsius; anything colder is a slip of the finger


def celsius_of(degrees, unit):
    """Degrees of either scale in Celsius, exact enough that a scheduled temperature stays itself."""
    if unit not in UNITS:
        raise ValueError(f"{unit!r} is not a scale: choose C or F")
    degrees = Decimal(degrees)
    return degrees if unit == CELSIUS else (degrees - 32) * 5 / 9


def fahrenheit_of(celsius):
    return Decimal(celsius) * 9 / 5 + 32


def hours_at(celsius):
    """Hours at that temperature once the core is cold; None where it is not cold enough."""
    for at, hours in SCHEDULE:
        if celsius <= at:
            return hours
    return None


def schedule_in(unit):
    """[(degrees in that scale, hours)] as it is told on a page."""
    if unit == CELSIUS:
        return [(at, hours) for at, hours in SCHEDULE]
    return [(fahrenheit_of(at).normalize(), hours) for at, hours in SCHEDULE]
