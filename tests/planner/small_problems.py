"""Tiny sizing problems to test with: one part, one supplier, one use, and what a test changes.

Takes changes by key; gives a problem file's object or the Problem it says. All figures invented.
"""

import copy

from planner.sizing.reading import problem_of

SMALL = {
    "periods": 3,
    "parts": [{"code": "box"}],
    "locations": ["shed"],
    "suppliers": [{"code": "mill"}],
    "offers": [
        {"code": "boxes", "supplier": "mill", "parts": {"box": 1}, "prices": [{"from_packs": 1, "price": 10}]}
    ],
    "scenarios": [
        {
            "code": "year",
            "probability": 1,
            "uses": [
                {
                    "code": "super",
                    "location": "shed",
                    "first": 1,
                    "last": 1,
                    "units": 4,
                    "value": 25,
                    "keeps": {"box": 1},
                }
            ],
        }
    ],
}

FULL_OFFER = {
    "code": "kit",
    "supplier": "mill",
    "parts": {"box": 1, "sheet": 10},
    "location": "hill",
    "prices": [{"from_packs": 1, "price": 20}, {"from_packs": 5, "price": 18.5}],
    "price_rule": "incremental",
    "order_periods": [0, 2],
    "lead_periods": 1,
    "max_packs": 30,
    "work_minutes": 12,
    "whole": False,
    "when": "later",
}
FULL_RECIPE = {
    "code": "fit",
    "takes": {"sheet": 10},
    "makes": {"box": 1},
    "location": "hill",
    "work_minutes": 15,
    "lead_periods": 1,
    "cost": 0.3,
}
FULL_HAUL = {
    "from": "shed",
    "to": "hill",
    "cost_per_unit": 0.1,
    "cost_per_lb": 0.02,
    "trip_cost": 9,
    "trip_lb": 800,
}
FULL_USES = [
    {"code": "hive", "location": "hill", "first": 0, "last": 3, "units": 4, "value": 50, "must": True},
    {
        "code": "super",
        "location": "hill",
        "first": 1,
        "last": 2,
        "units": 3.5,
        "value": -2,
        "must": False,
        "keeps": {"box": 1},
        "spends": {"sheet": 2},
        "needs_use": "hive",
        "per": 2,
    },
]
FULL_ARRIVALS = [{"part": "box", "location": "hill", "period": 2, "quantity": 6}]
FULL = {
    "periods": 4,
    "money": "EUR",
    "parts": [
        {"code": "box", "end_value": 2, "holding_cost": 0.5, "weight_lb": 8},
        {"code": "sheet", "end_value": 0.5, "holding_cost": [0, 0.1, 0.1, 0]},
    ],
    "locations": ["shed", "hill"],
    "stock": [{"part": "sheet", "location": "shed", "quantity": 5, "period": 1}],
    "suppliers": [
        {"code": "mill", "order_fee": [1, 2, 3, 4], "free_from": 100},
        {"code": "near", "order_fee": 7},
    ],
    "offers": [FULL_OFFER],
    "recipes": [FULL_RECIPE],
    "work": {"minutes_per_period": [60, 60, 0, 60], "cost_per_hour": 12},
    "whole_uses": False,
    "bad_years": {"weight": 0.25, "share": 0.2},
    "budget": 500,
    "later_budget": 90,
    "hauls": [FULL_HAUL],
    "scenarios": [{"code": "year", "probability": 1, "uses": FULL_USES, "arrivals": FULL_ARRIVALS}],
}


def small(**changes):
    """The object with keys changed; `offer`, `use`, `part`, `supplier` change the first of their list."""
    data = copy.deepcopy(SMALL)
    for kind, rows in (
        ("offer", data["offers"]),
        ("use", data["scenarios"][0]["uses"]),
        ("part", data["parts"]),
        ("supplier", data["suppliers"]),
    ):
        rows[0].update(changes.pop(kind, {}))
    data.update(changes)
    return data


def small_problem(**changes):
    return problem_of(small(**changes))


def years(*chances, **use_changes):
    """Scenarios that differ in the use's units: years((0.5, 2), (0.5, 8))."""
    rows = []
    for number, (probability, units) in enumerate(chances):
        row = copy.deepcopy(SMALL["scenarios"][0])
        row.update(code=f"year-{number}", probability=probability)
        row["uses"][0].update(units=units, **use_changes)
        rows.append(row)
    return rows


def full():
    """A problem file's object in which every key of the form stands, none at its default."""
    return copy.deepcopy(FULL)
