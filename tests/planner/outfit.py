"""A small outfit in the books, all of it invented: two yards, twelve colonies, a shed and two suppliers."""

import datetime as dt

from apiary.models import Yard
from planner.models import Season
from tests import makers

DAY = dt.date(2025, 1, 15)
EARLIER = dt.date(2024, 10, 1)


def make_outfit():
    """Strong enough to split and to need supers in clover, short of mediums and of boxes for the splits."""
    makers.make_keeper(region="middle")
    home = makers.make_shed(name="Shed")
    creek = makers.make_yard("creek", name="Creek", stands=16, drive_minutes=30, miles=18)
    hill = makers.make_yard("hill", name="Hill", stands=12, drive_minutes=50, miles=30)
    makers.make_window(creek, first_week=21, last_week=27, gain_lb=80)
    makers.make_window(hill, first_week=22, last_week=28, gain_lb=60)
    for yard, strengths in ((creek, ("strong",) * 5 + ("fair",) * 2), (hill, ("fair",) * 4 + ("weak",))):
        for strength in strengths:
            makers.make_colony(yard=yard, strength=strength, gear=True, day=EARLIER)
    makers.put(
        home, {"box-medium-10": 8, "frame-medium-foundation": 20, "comb-medium-honey": 60}, day=EARLIER
    )
    makers.put(home, {"box-medium-10": 2}, day=EARLIER, condition="to mend")
    make_prices()


def make_prices():
    mill = makers.make_supplier(
        "mill", name="Mill Lane Woodware (invented)", order_fee_cents=4500, lead_weeks=3
    )
    bees = makers.make_supplier(
        "bees", name="Beeline Supply (invented)", free_from_cents=20_000, order_fee_cents=1900
    )
    for part, units, cents, supplier in (
        ("box-medium-10-flat", 5, 7000, mill),
        ("box-deep-10-flat", 5, 9500, mill),
        ("frame-medium-flat", 50, 6000, mill),
        ("frame-deep-flat", 50, 6300, mill),
        ("foundation-medium", 50, 7000, bees),
        ("foundation-deep", 50, 8400, bees),
        ("floor-10", 1, 1700, mill),
        ("inner-cover-10", 1, 1400, mill),
        ("cover-10", 1, 2600, mill),
        ("nuc-box-5", 1, 3300, mill),
        ("excluder-10", 10, 9900, bees),
        ("sugar", 50, 3200, bees),
        ("jar", 12, 1100, bees),
        ("bucket", 1, 900, bees),
        ("treatment", 10, 4500, bees),
        ("patty", 10, 2600, bees),
    ):
        makers.make_offer(
            {part: units},
            supplier=supplier,
            code=f"{supplier.code}-{part}",
            steps=((1, cents),),
            name=f"{part}, {units} a pack",
        )


def make_season(**fields):
    usual = {"name": "Winter order 2025", "starts_on": DAY, "budget_cents": 200_000}
    return Season.objects.create(**{**usual, **fields})


def shed():
    return Yard.objects.get(is_shed=True)
