"""One invented yard of like colonies, with the catalogue's gear: the plainest operation a season can be projected of.

Gives an Operation, its Assumptions and a scenario in which the year is exactly average.
"""

import datetime as dt
import json
from decimal import Decimal

from inventory.catalogue import CATALOGUE
from planner.season.assumptions import assumptions_of
from planner.season.operation import ColonyGroup, Operation, PartFacts, SetFacts, WindowFacts, YardFacts
from planner.season.scenarios import SeasonScenario

DAY = dt.date(2024, 12, 2)


def catalogue():
    return json.loads(CATALOGUE.read_text(encoding="utf-8"))


def parts_of(rows):
    words = ("code", "name", "kind", "depth", "width", "comb", "comb_use", "treated", "flat", "unit")
    return tuple(
        PartFacts(
            **{word: row[word] for word in words if word in row},
            weight_lb=float(row["tare_lb"]),
            list_price=Decimal(row["list_price"]),
        )
        for row in rows
    )


def set_of(data, code):
    """A hive set of the catalogue with the gear of a colony in it."""
    row = next(row for row in data["hive_sets"] if row["code"] == code)
    gear = next(each["parts"] for each in data["gear_sets"] if each["code"] == code)
    depths = {"deep": row["deep_boxes"], "medium": row["medium_boxes"], "shallow": row["shallow_boxes"]}
    boxes = {depth: number for depth, number in depths.items() if number}
    return SetFacts(
        code=code, name=row["name"], width=row["width"], boxes=boxes, gear=gear, is_nuc=row["is_nuc"]
    )


def yard(number, stands, window):
    return YardFacts(
        code=f"yard-{number}",
        name=f"Invented yard {number}",
        stands=stands,
        drive_minutes=20,
        miles=10,
        windows=(window,),
    )


def operation(
    *,
    colonies,
    gain_lb=0.0,
    strength="strong",
    hive_set="two-deeps-10",
    yards=1,
    region="middle",
    spread=0.35,
):
    """`colonies` of one strength spread evenly over the yards, each yard with one flow from week 20 to 27."""
    data = catalogue()
    window = WindowFacts(name="clover", first_week=20, last_week=27, gain_lb=gain_lb, spread=spread)
    counts = [colonies // yards + (k < colonies % yards) for k in range(yards)]
    shed = YardFacts(code="shed", name="Shed", stands=0, drive_minutes=0, miles=0)
    return Operation(
        day=DAY,
        money="USD",
        region=region,
        shed="shed",
        yards=(shed, *(yard(k, count, window) for k, count in enumerate(counts))),
        sets=(set_of(data, hive_set),),
        colonies=tuple(
            ColonyGroup(yard=f"yard-{k}", hive_set=hive_set, strength=strength, colonies=count)
            for k, count in enumerate(counts)
        ),
        parts=parts_of(data["parts"]),
    )


def answers(told, **given):
    """The assumptions of these answers for that operation."""
    return assumptions_of(given, start=DAY, region=told.region, operation=told)


def average(told, assumptions, *, survive=1.0):
    """A year in which that share survives, every flow is its mean and splits do as said."""
    return SeasonScenario(
        code="average",
        probability=1.0,
        survivors={(g.yard, g.hive_set, g.strength): int(g.colonies * survive) for g in told.colonies},
        flow={(yard.code, window.name): 1.0 for yard in told.yards for window in yard.windows},
        year_flow=1.0,
        split_success=assumptions.split_success,
    )
