"""How a report says days, sums, names and lists. Takes plain values, gives short English; knows no plan."""

import datetime as dt
from decimal import ROUND_HALF_UP, Decimal

CENT = Decimal("0.01")
SIGNS = {"USD": "$", "CAD": "CA$", "AUD": "A$", "NZD": "NZ$", "GBP": "£", "EUR": "€"}


def cents(value):
    """A float or Decimal as money to the cent."""
    return Decimal(repr(float(value)) if not isinstance(value, Decimal) else value).quantize(
        CENT, ROUND_HALF_UP
    )


def sum_words(value, money, *, cents_too=False):
    """$1,240 or $1,240.50; money without a sign of its own is named after the figure."""
    value = Decimal(value)
    figure = f"{abs(value):,.2f}" if cents_too else f"{abs(value):,.0f}"
    minus = "−" if value < 0 and figure.strip("0.,") else ""
    sign = SIGNS.get(money)
    return f"{minus}{sign}{figure}" if sign else f"{minus}{figure} {money}"


def day_words(day):
    return f"{day.day} {day:%B %Y}"


def part_of_month(day):
    """Early to the 10th, mid to the 20th, then late."""
    third = "early" if day.day <= 10 else "mid" if day.day <= 20 else "late"
    return f"{third} {day:%B}"


def week_day(start, period):
    return start + dt.timedelta(weeks=int(period))


def capital(words):
    """The first letter large, the rest as it is."""
    return words[:1].upper() + words[1:]


def listed(words):
    """a, b and c."""
    words = list(words)
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} and {words[-1]}"


def number(value):
    return f"{round(value):,}"


def of_100(share):
    """Seasons of 100: never 0 for a share above 0, never 100 for one below 1."""
    if share <= 0 or share >= 1:
        return 0 if share <= 0 else 100
    return min(99, max(1, round(share * 100)))


def seasons(in_100):
    """in 31 seasons of 100; in every season."""
    if in_100 >= 100:
        return "in every season"
    return f"in {in_100} season{'' if in_100 == 1 else 's'} of 100"


def percent(share, places=0):
    """72 %, never broken over two lines."""
    return f"{share * 100:.{places}f}\N{NO-BREAK SPACE}%"


def amount(units, unit):
    """60 (pieces), 1,500 lb, 2 boxes: a figure with its unit."""
    figure = number(units)
    if unit in ("", "piece"):
        return figure
    return f"{figure} {units_word(unit, many=round(units) != 1)}"


def units_word(unit, *, many):
    """Weights are not counted in s: 2 lb, 2 doses, 2 boxes."""
    return plural(unit) if many and unit not in ("lb", "oz", "kg") else unit


def plural(noun):
    """Of the last word only; words that end in a hiss take es."""
    if noun.endswith(("s", "x", "ch", "sh")):
        return noun if noun.endswith("s") else noun + "es"
    if noun.endswith("y") and noun[-2:-1] not in "aeiou":
        return noun[:-1] + "ies"
    return noun + "s"


def places(yards, most=2):
    """at Creek, Hill and Mill; of many, the first two above all."""
    yards = list(yards)
    if not yards:
        return ""
    if len(yards) <= most + 1:
        return f" at {listed(yards)}"
    return f", above all at {listed(yards[:most])}"
