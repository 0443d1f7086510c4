"""The demo keeper's workbook, invented: takes the scenario of fixtures/demo.json, a day and a seed; gives a Sheet.

Pure: the same seed gives the same sheet. Reads no file and no clock; every name in it is invented.
"""

import datetime as dt
from decimal import Decimal

import numpy as np

from inventory.sheets.records import (
    ColonyRow,
    FlowRow,
    GearRow,
    KeeperRow,
    OfferRow,
    Sheet,
    SupplierRow,
    YardRow,
)

SETS = (("two-deeps-10", 0.70), ("one-deep-10", 0.22), ("nuc-5", 0.08))
STRENGTHS = {
    "two-deeps-10": (("strong", 0.45), ("fair", 0.40), ("weak", 0.15)),
    "one-deep-10": (("strong", 0.10), ("fair", 0.55), ("weak", 0.35)),
    "nuc-5": (("fair", 0.50), ("weak", 0.50)),
}


def code_of(name):
    """A yard's code from its name: lower case, hyphens."""
    return name.lower().replace(" ", "-")


def sheet_of(scenario, *, day, order_day, seed):
    """The whole workbook as filled in on `day`; early prices hold until some weeks after `order_day`."""
    random = np.random.default_rng(seed)
    return Sheet(
        keeper=KeeperRow(**scenario["keeper"]),
        yards=tuple(_yard(row) for row in scenario["yards"]),
        flows=tuple(_flow(row) for row in scenario["flows"]),
        colonies=tuple(_colonies(scenario["yards"], day, random)),
        gear=tuple(_gear(scenario)),
        suppliers=tuple(_supplier(row) for row in scenario["suppliers"]),
        offers=tuple(_offer(row, order_day, scenario["early_until_weeks"]) for row in scenario["prices"]),
    )


def _yard(row):
    return YardRow(
        code=code_of(row["name"]),
        name=row["name"],
        is_shed=row.get("shed", False),
        region="invented",
        stands=row["stands"],
        drive_minutes=row["drive_minutes"],
        miles=Decimal(row["miles"]),
        gate=row["gate"],
        emergency=row["emergency"],
    )


def _flow(row):
    return FlowRow(
        yard=code_of(row["yard"]),
        name=row["name"],
        first_week=row["first_week"],
        last_week=row["last_week"],
        gain_lb=Decimal(row["gain_lb"]),
        spread=Decimal(row["spread"]),
    )


def _drawn_from(random, shares):
    words = [word for word, _ in shares]
    return words[int(random.choice(len(words), p=[share for _, share in shares]))]


def _colonies(yards, day, random):
    for yard in yards:
        letters = "".join(word[0] for word in yard["name"].split())
        for number in range(1, yard["colonies"] + 1):
            hive_set = _drawn_from(random, SETS)
            yield ColonyRow(
                tag=f"{letters}-{number:02}",
                yard=code_of(yard["name"]),
                hive_set=hive_set,
                strength=_drawn_from(random, STRENGTHS[hive_set]),
                started_on=day - dt.timedelta(days=int(random.integers(200, 1100))),
            )


def _gear(scenario):
    for condition, places in (("sound", scenario["opening_gear"]), ("to mend", scenario["to_mend"])):
        for yard, pieces in places.items():
            for part, quantity in pieces.items():
                yield GearRow(yard=code_of(yard), part=part, condition=condition, quantity=quantity)


def _supplier(row):
    return SupplierRow(
        code=row["code"],
        name=row["name"],
        order_fee=Decimal(row["order_fee"]),
        free_from=None if row["free_from"] is None else Decimal(row["free_from"]),
        lead_weeks=row["lead_weeks"],
    )


def _offer(row, order_day, early_weeks):
    return OfferRow(
        code=row["code"],
        supplier=row["supplier"],
        name=row["name"],
        parts=row["parts"],
        prices=tuple((packs, Decimal(price)) for packs, price in row["steps"]),
        open_until=order_day + dt.timedelta(weeks=early_weeks) if row["early"] else None,
    )
