"""Invented operations of any size, to measure with: yards, colonies, flows and stock drawn by a seed.

Takes the catalogue and the demo's market (its suppliers, price list and opening gear) as plain objects, and a size;
gives an Operation, and the sizing problem of so many scenarios of its season. Reads no file. Every figure is invented.
"""

import datetime as dt
from dataclasses import dataclass
from decimal import Decimal

import numpy as np

from planner.bench.catalogue import part_of, recipe_of, set_of
from planner.projection import project
from planner.requirement import sizing_problem
from planner.season.assumptions import assumptions_of
from planner.season.operation import (
    ColonyGroup,
    OfferFacts,
    Operation,
    StockLine,
    SupplierFacts,
    WindowFacts,
    YardFacts,
)
from planner.season.scenarios import draw

DAY = dt.date(2025, 11, 15)
REGION = "north"
SHED = "shed"
BUDGET_A_COLONY = 55
COLONIES_OF_THE_MARKET = 110  # the demo's gear is that of so many colonies
SET_SHARES = (("two-deeps-10", 0.70), ("one-deep-10", 0.22), ("nuc-5", 0.08))
STRENGTH_SHARES = {
    "two-deeps-10": (("strong", 0.45), ("fair", 0.40), ("weak", 0.15)),
    "one-deep-10": (("strong", 0.10), ("fair", 0.55), ("weak", 0.35)),
    "nuc-5": (("fair", 0.50), ("weak", 0.50)),
}
SUPERS_LEFT_AT_YARDS = {"box-medium-10": 1, "comb-medium-honey": 9}


@dataclass(frozen=True, kw_only=True)
class Size:
    """How large an operation is; the shed is one more place beside its yards."""

    yards: int
    colonies: int

    @property
    def name(self):
        return f"{self.yards} yards, {self.colonies:,} colonies"


def season_problem(operation, *, scenarios, seed, budget_a_colony=BUDGET_A_COLONY, answers=None):
    """The sizing problem of `scenarios` ways the season may go, 52 weekly periods."""
    told = assumptions_of(answers or {}, start=operation.day, region=REGION)
    projections = [project(operation, told, way) for way in draw(operation, told, count=scenarios, seed=seed)]
    colonies = sum(group.colonies for group in operation.colonies)
    return sizing_problem(operation, told, projections, budget=Decimal(budget_a_colony * colonies))


def invented(catalogue, market, size, *, seed):
    """An operation of that size; the same seed gives the same."""
    random = np.random.default_rng([seed, size.yards, size.colonies])
    sets = {row["code"]: row for row in catalogue["hive_sets"]}
    gear = {row["hive_set"]: row["parts"] for row in catalogue["gear_sets"] if row.get("hive_set")}
    yards = [f"yard-{number + 1:02}" for number in range(size.yards)]
    counts = _counts(random, size)
    return Operation(
        day=DAY,
        money="USD",
        region=REGION,
        shed=SHED,
        yards=(_shed(), *(_yard(random, code, n) for code, n in zip(yards, counts, strict=True))),
        sets=tuple(set_of(sets[code], gear[code]) for code, _ in SET_SHARES),
        colonies=tuple(_colonies(random, yards, counts, gear)),
        parts=tuple(part_of(row) for row in catalogue["parts"]),
        stock=tuple(_stock(random, market, yards, size)),
        suppliers=tuple(_supplier(row) for row in market["suppliers"]),
        offers=tuple(_offer(row, market) for row in market["prices"]),
        recipes=tuple(recipe_of(row) for row in catalogue["recipes"]),
    )


def _counts(random, size):
    """Colonies a yard, within a quarter of the average, in sum all of them."""
    weights = random.uniform(0.75, 1.25, size.yards)
    shares = size.colonies * weights / weights.sum()
    counts = np.floor(shares).astype(int)
    for at in np.argsort(counts - shares)[: size.colonies - counts.sum()]:
        counts[at] += 1
    return counts.tolist()


def _shed():
    return YardFacts(code=SHED, name="Shed", stands=0, drive_minutes=0, miles=0.0)


def _yard(random, code, colonies):
    minutes = int(random.integers(12, 45))
    return YardFacts(
        code=code,
        name=code.capitalize(),
        stands=round(colonies * 1.3) + 2,
        drive_minutes=minutes,
        miles=round(minutes * 0.6, 1),
        windows=tuple(_windows(random)),
    )


def _windows(random):
    """Clover everywhere, an early flow at two yards in five, a late one at three."""
    clover = int(random.integers(23, 25))
    early, late = random.random() < 0.4, random.random() < 0.6
    gains = {
        "Maple and fruit": (random.uniform(10, 17), 16, 20, 0.40),
        "Clover": (random.uniform(48, 70), clover, clover + int(random.integers(5, 7)), 0.35),
        "Goldenrod": (random.uniform(18, 27), 34, 38, 0.45),
    }
    for name, (gain, first, last, spread) in gains.items():
        if name == "Clover" or (early if name == "Maple and fruit" else late):
            yield WindowFacts(name=name, first_week=first, last_week=last, gain_lb=round(gain), spread=spread)


def _colonies(random, yards, counts, gear):
    for yard, count in zip(yards, counts, strict=True):
        groups: dict = {}
        for _ in range(count):
            hive_set = _drawn(random, SET_SHARES)
            key = hive_set, _drawn(random, STRENGTH_SHARES[hive_set])
            groups[key] = groups.get(key, 0) + 1
        for (hive_set, strength), colonies in sorted(groups.items()):
            held = {part: pieces * colonies for part, pieces in gear[hive_set].items()}
            yield ColonyGroup(yard=yard, hive_set=hive_set, strength=strength, colonies=colonies, gear=held)


def _drawn(random, shares):
    return shares[int(random.choice(len(shares), p=[share for _, share in shares]))][0]


def _stock(random, market, yards, size):
    """The demo's gear by the colonies, a part of the supers left at every other yard."""
    scale = size.colonies / COLONIES_OF_THE_MARKET
    for part, pieces in market["opening_gear"]["Shed"].items():
        count = round(pieces * scale * random.uniform(0.85, 1.15))
        if count:
            yield StockLine(part=part, yard=SHED, condition="sound", quantity=count)
    for yard in yards[::2]:
        supers = round(size.colonies / size.yards * random.uniform(0.6, 1.2))
        for part, pieces in SUPERS_LEFT_AT_YARDS.items():
            if supers:
                yield StockLine(part=part, yard=yard, condition="sound", quantity=supers * pieces)


def _supplier(row):
    return SupplierFacts(
        code=row["code"],
        name=row["name"],
        order_fee=Decimal(row["order_fee"]),
        free_from=None if row["free_from"] is None else Decimal(row["free_from"]),
        lead_weeks=row["lead_weeks"],
    )


def _offer(row, market):
    leads = {supplier["code"]: supplier["lead_weeks"] for supplier in market["suppliers"]}
    until = DAY + dt.timedelta(weeks=market["early_until_weeks"]) if row["early"] else None
    return OfferFacts(
        code=row["code"],
        supplier=row["supplier"],
        name=row["name"],
        parts=dict(row["parts"]),
        prices=tuple((packs, Decimal(price)) for packs, price in row["steps"]),
        open_until=until,
        lead_weeks=leads[row["supplier"]],
    )
