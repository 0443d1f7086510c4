"""An invented operation for the planner's tests: 8 yards, about 110 colonies, three invented suppliers.

`operation()` makes it; keyword arguments replace any field. Parts, recipes and sets are the catalogue's own.
"""

import datetime as dt
import json
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

from planner.bench.catalogue import part_of, recipe_of, set_of
from planner.season.operation import (
    ColonyGroup,
    OfferFacts,
    Operation,
    StockLine,
    SupplierFacts,
    WindowFacts,
    YardFacts,
)

CATALOGUE = Path(__file__).parents[2] / "fixtures" / "catalogue.json"
DAY = dt.date(2025, 12, 1)

# name, stands, drive minutes, miles, colonies, clover gain lb, goldenrod gain lb (0: none). All invented.
YARDS = (
    ("alder", 20, 12, 6.5, 16, 62, 22),
    ("birch", 16, 18, 9.0, 13, 55, 26),
    ("cedar", 18, 25, 14.0, 15, 58, 0),
    ("dogwood", 14, 31, 19.5, 11, 70, 18),
    ("elm", 20, 22, 12.0, 17, 66, 20),
    ("fir", 14, 40, 27.0, 12, 48, 0),
    ("gorse", 16, 35, 21.5, 14, 60, 0),
    ("hazel", 14, 16, 8.0, 12, 54, 24),
)

STOCK = (
    ("box-medium-10", "shed", 120),
    ("comb-medium-honey", "shed", 700),
    ("frame-medium-foundation", "shed", 150),
    ("frame-medium-flat", "shed", 100),
    ("box-deep-10", "shed", 14),
    ("comb-deep-brood", "shed", 60),
    ("frame-deep-foundation", "shed", 40),
    ("floor-10", "shed", 10),
    ("cover-10", "shed", 8),
    ("inner-cover-10", "shed", 8),
    ("nuc-box-5", "shed", 12),
    ("excluder-10", "shed", 70),
    ("reducer-10", "shed", 90),
    ("guard-10", "shed", 80),
    ("feeder-10", "shed", 35),
    ("sugar", "shed", 200),
    ("jar", "shed", 240),
    ("bucket", "shed", 20),
    ("paint", "shed", 2),
    ("box-medium-10", "alder", 12),
    ("comb-medium-honey", "alder", 108),
)

SUPPLIERS = (
    SupplierFacts(
        code="oakham",
        name="Oakham Boxes (invented)",
        order_fee=Decimal(85),
        free_from=Decimal(2500),
        lead_weeks=4,
    ),
    SupplierFacts(
        code="thimble",
        name="Thimble Outfitters (invented)",
        order_fee=Decimal(60),
        free_from=Decimal(1500),
        lead_weeks=3,
    ),
    SupplierFacts(code="larder", name="Larder Dry Goods (invented)", lead_weeks=1),
)

# code, supplier, name, parts, price steps
OFFERS = (
    ("ok-medium-5", "oakham", {"box-medium-10-flat": 5}, ((1, "72.50"), (10, "67.50"), (20, "64.00"))),
    ("ok-deep-5", "oakham", {"box-deep-10-flat": 5}, ((1, "92.50"), (10, "86.00"))),
    ("ok-frame-m", "oakham", {"frame-medium-flat": 100}, ((1, "108.00"), (10, "99.00"))),
    ("ok-frame-d", "oakham", {"frame-deep-flat": 100}, ((1, "116.00"), (10, "106.00"))),
    (
        "ok-hive",
        "oakham",
        {"box-deep-10-flat": 1, "floor-10": 1, "inner-cover-10": 1, "cover-10": 1, "reducer-10": 1},
        ((1, "74.00"), (10, "69.00")),
    ),
    ("ok-floor", "oakham", {"floor-10": 1}, ((1, "16.50"),)),
    ("ok-cover", "oakham", {"cover-10": 1}, ((1, "24.50"),)),
    ("ok-inner", "oakham", {"inner-cover-10": 1}, ((1, "12.75"),)),
    ("ok-nuc-5", "oakham", {"nuc-box-5": 5}, ((1, "118.00"),)),
    ("ok-reducer", "oakham", {"reducer-10": 10}, ((1, "17.00"),)),
    ("th-sheet-m", "thimble", {"foundation-medium": 50}, ((1, "78.00"), (5, "72.00"))),
    ("th-sheet-d", "thimble", {"foundation-deep": 50}, ((1, "92.00"), (5, "86.00"))),
    ("th-medium", "thimble", {"box-medium-10": 1}, ((1, "21.50"), (50, "19.75"))),
    ("th-framed-m", "thimble", {"frame-medium-foundation": 10}, ((1, "37.00"),)),
    ("th-framed-d", "thimble", {"frame-deep-foundation": 10}, ((1, "41.00"),)),
    ("th-excluder", "thimble", {"excluder-10": 1}, ((1, "10.50"), (25, "9.25"))),
    ("th-feeder", "thimble", {"feeder-10": 1}, ((1, "23.00"),)),
    ("th-guard", "thimble", {"guard-10": 10}, ((1, "34.00"),)),
    ("th-treatment", "thimble", {"treatment": 10}, ((1, "62.00"), (10, "57.00"))),
    ("th-nails", "thimble", {"frame-nails": 1}, ((1, "6.00"),)),
    ("th-bucket", "thimble", {"bucket": 10}, ((1, "72.00"),)),
    ("la-sugar", "larder", {"sugar": 50}, ((1, "34.00"), (20, "32.00"))),
    ("la-patty", "larder", {"patty": 10}, ((1, "29.00"),)),
    ("la-jar", "larder", {"jar": 144}, ((1, "128.00"), (10, "118.00"))),
    ("la-paint", "larder", {"paint": 1}, ((1, "13.50"),)),
    ("la-fasteners", "larder", {"fasteners": 20}, ((1, "11.00"),)),
    ("la-glue", "larder", {"glue": 1}, ((1, "8.20"),)),
)


def operation(**changes):
    """The invented operation as of 1 December, two fifths of it in two deeps, the rest in singles."""
    catalogue = json.loads(CATALOGUE.read_text())
    whole = Operation(
        day=DAY,
        money="USD",
        region="north",
        shed="shed",
        yards=(_shed(), *(_yard(row) for row in YARDS)),
        sets=_sets(catalogue),
        colonies=tuple(group for row in YARDS for group in _colonies(row)),
        parts=tuple(part_of(row) for row in catalogue["parts"]),
        stock=tuple(StockLine(part=p, yard=y, condition="sound", quantity=q) for p, y, q in STOCK),
        suppliers=SUPPLIERS,
        offers=tuple(_offer(row) for row in OFFERS),
        recipes=tuple(recipe_of(row) for row in catalogue["recipes"]),
        truck_lb=1500,
    )
    return replace(whole, **changes)


def _shed():
    return YardFacts(code="shed", name="Shed", stands=0, drive_minutes=0, miles=0.0)


def _yard(row):
    code, stands, minutes, miles, _, clover, goldenrod = row
    windows = [WindowFacts(name="Clover", first_week=23, last_week=29, gain_lb=clover, spread=0.35)]
    if goldenrod:
        windows.append(
            WindowFacts(name="Goldenrod", first_week=34, last_week=38, gain_lb=goldenrod, spread=0.45)
        )
    return YardFacts(
        code=code,
        name=code.capitalize(),
        stands=stands,
        drive_minutes=minutes,
        miles=miles,
        windows=tuple(windows),
    )


def _colonies(row):
    code, colonies = row[0], row[4]
    double = colonies * 2 // 5
    counts = {
        ("two-deeps-10", "strong"): double,
        ("one-deep-10", "strong"): (colonies - double) // 3,
        ("one-deep-10", "weak"): (colonies - double) // 4,
    }
    counts["one-deep-10", "fair"] = colonies - sum(counts.values())
    return [
        ColonyGroup(yard=code, hive_set=hive_set, strength=strength, colonies=count)
        for (hive_set, strength), count in counts.items()
        if count
    ]


def _sets(catalogue):
    gear = {row["hive_set"]: row["parts"] for row in catalogue["gear_sets"] if row["hive_set"]}
    return tuple(set_of(row, gear[row["code"]]) for row in catalogue["hive_sets"])


def _offer(row):
    code, supplier, parts, steps = row
    lead = next(facts.lead_weeks for facts in SUPPLIERS if facts.code == supplier)
    name = ", ".join(f"{pieces} {part}" for part, pieces in parts.items())
    prices = tuple((packs, Decimal(price)) for packs, price in steps)
    return OfferFacts(
        code=code, supplier=supplier, name=f"{name} (invented)", parts=parts, prices=prices, lead_weeks=lead
    )
