"""A small season worked out by hand: two yards, four seasons of equal chance, one supplier. All of it is invented.

Ten sound medium boxes are in the shed; the supers of a flow want 8, 12, 16 and 20 of them in week 24; in the third
season deadouts give 7 back in week 17. Two packs of five boxes in pieces are bought, and a bag of sugar.
"""

import datetime as dt
from decimal import Decimal

from planner.season.assumptions import assumptions_of
from planner.season.operation import (
    ColonyGroup,
    OfferFacts,
    OnOrder,
    Operation,
    PartFacts,
    SetFacts,
    StockLine,
    SupplierFacts,
    YardFacts,
)
from planner.sizing.reading import problem_of
from planner.solution.plan_json import plan_of

DAY = dt.date(2026, 12, 1)
WANTED = (8, 12, 16, 20)
BOX, FLAT = "box-medium-10", "box-medium-10-flat"


def operation(**changed):
    facts = {
        "day": DAY,
        "money": "USD",
        "region": "middle",
        "shed": "shed",
        "yards": (
            YardFacts(code="shed", name="Shed", stands=0, drive_minutes=0, miles=0),
            YardFacts(code="creek", name="Creek", stands=20, drive_minutes=15, miles=9),
            YardFacts(code="hill", name="Hill", stands=20, drive_minutes=20, miles=12),
        ),
        "sets": (
            SetFacts(code="one-medium", name="one medium", width=10, boxes={"medium": 1}, gear={BOX: 1}),
        ),
        "colonies": (
            ColonyGroup(yard="creek", hive_set="one-medium", strength="strong", colonies=12, gear={BOX: 12}),
        ),
        "parts": (
            PartFacts(code=BOX, name="medium box, 10 frames", kind="box", depth="medium", width=10),
            PartFacts(
                code=FLAT,
                name="medium box, 10 frames, in pieces",
                kind="box",
                depth="medium",
                width=10,
                flat=True,
                list_price=Decimal(16),
            ),
            PartFacts(code="sugar", name="white sugar", kind="feed", unit="lb", list_price=Decimal("0.72")),
            PartFacts(code="guard-10", name="mouse guard, 10 frames", kind="guard", width=10),
        ),
        "stock": (
            StockLine(part=BOX, yard="shed", condition="sound", quantity=10),
            StockLine(part=BOX, yard="shed", condition="to mend", quantity=2),
            StockLine(part=BOX, yard="hill", condition="held back", quantity=1),
        ),
        "suppliers": (SupplierFacts(code="north", name="North Woodware (invented)"),),
        "offers": (
            OfferFacts(
                code="north-box",
                supplier="north",
                name="Medium box, in pieces, pack of 5",
                parts={FLAT: 5},
                prices=((1, Decimal(80)), (2, Decimal("72.50"))),
                open_until=dt.date(2027, 1, 31),
            ),
            OfferFacts(
                code="north-sugar",
                supplier="north",
                name="Sugar, 50 lb bag",
                parts={"sugar": 50},
                prices=((1, Decimal(31)),),
            ),
        ),
        "truck_lb": 1500,
    }
    return Operation(**{**facts, **changed})


def on_order(quantity):
    return (OnOrder(part=BOX, quantity=quantity, due=dt.date(2027, 2, 1), reference="N-7"),)


def assumptions(**answers):
    return assumptions_of(answers, start=DAY, region="middle")


def uses(number, wanted):
    return [
        use("super/creek/clover/strong/1", "creek", 24, 30, min(wanted, 12), 30, {BOX: 1}),
        use("super/hill/clover/strong/1", "hill", 26, 30, max(0, wanted - 12), 30, {BOX: 1}),
        {
            "code": "feed/creek/autumn",
            "location": "creek",
            "first": 40,
            "last": 40,
            "units": 30 + 10 * number,
            "value": 0,
            "must": True,
            "spends": {"sugar": 1},
        },
    ]


def use(code, location, first, last, units, value, keeps):
    facts = {"code": code, "location": location, "first": first, "last": last, "units": units}
    return {**facts, "value": value, "keeps": keeps}


def problem(**changed):
    return problem_of(problem_data(**changed))


def problem_data(**changed):
    data = {
        "periods": 52,
        "parts": [{"code": code} for code in (BOX, FLAT, "sugar", "guard-10")],
        "locations": ["shed", "creek", "hill"],
        "stock": [{"part": BOX, "location": "shed", "quantity": 10}],
        "suppliers": [{"code": "north", "order_fee": 24, "free_from": 500}],
        "offers": [
            {
                "code": "north-box",
                "supplier": "north",
                "parts": {FLAT: 5},
                "prices": [{"from_packs": 1, "price": 80}, {"from_packs": 2, "price": 72.5}],
                "lead_periods": 3,
            },
            {
                "code": "north-sugar",
                "supplier": "north",
                "parts": {"sugar": 50},
                "prices": [{"from_packs": 1, "price": 31}],
                "lead_periods": 2,
            },
            {
                "code": "later-sugar",
                "supplier": "north",
                "parts": {"sugar": 1},
                "prices": [{"from_packs": 1, "price": 0.95}],
                "order_periods": list(range(52)),
                "when": "later",
            },
        ],
        "recipes": [
            {"code": "assemble-box-medium-10", "takes": {FLAT: 1}, "makes": {BOX: 1}, "work_minutes": 14}
        ],
        "budget": 250,
        "scenarios": [
            {
                "code": f"s{number + 1}",
                "probability": 0.25,
                "uses": [each for each in uses(number, wanted) if each["units"]],
                "arrivals": [{"part": BOX, "location": "hill", "period": 17, "quantity": 7}]
                if number == 2
                else [],
            }
            for number, wanted in enumerate(WANTED)
        ],
    }
    return {**data, **changed}


def plan(**changed):
    """By hand: ten boxes and a bag bought; what the seasons miss is assembled in week 20; sugar beyond 50 later."""
    data = {
        "status": "within_gap",
        "reason": "",
        "objective": 200.0,
        "bound": 200.1,
        "gap": 0.0005,
        "seconds": 0.1,
        "solver": "highs",
        "here_and_now": [
            {"offer": "north-box", "period": 0, "packs": 2, "units": {FLAT: 10}, "cost": 145.0},
            {"offer": "north-sugar", "period": 0, "packs": 1, "units": {"sugar": 50}, "cost": 31.0},
        ],
        "fees": [{"supplier": "north", "period": 0, "fee": 24.0}],
        "spend": 200.0,
        "scenarios": [solved(number, wanted) for number, wanted in enumerate(WANTED)],
        "shadow_prices": None,
        "shadow_prices_withheld": "made by hand",
    }
    return plan_of({**data, **changed})


def solved(number, wanted):
    missing = max(0, wanted - 10 - (7 if number == 2 else 0))
    sugar = 30 + 10 * number
    served = [{"use": each["code"], "units": each["units"]} for each in uses(number, wanted) if each["units"]]
    later = [{"offer": "later-sugar", "period": 40, "packs": sugar - 50, "cost": 0.95 * (sugar - 50)}]
    made = [{"recipe": "assemble-box-medium-10", "period": 20, "units": missing}]
    return {
        "code": f"s{number + 1}",
        "objective": 50.0 + 100 * number,
        "later": later if sugar > 50 else [],
        "fees": [],
        "served": served,
        "short": [],
        "made": made if missing else [],
        "hauled": [],
        "trips": [],
        "work": [0] * 52,
    }
