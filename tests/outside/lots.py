"""Dynamic lots as sizing problems: one part, a fee an order, a must-use a period that spends, holding.

Takes a case's data (requirement, setup, holding, ... one entry a period); gives the problem file as a dict.
Published periods count from 1, ours from 0. Holding is paid on what lies idle at the end of a period.
"""

EVERYTHING = 100.0  # worth of serving a unit late at all: dearer than any plan, so that all is served


def per_period(value, periods):
    return list(value) if isinstance(value, list) else [value] * periods


def spent(requirement, *, part="item", value=0, code="use"):
    """A must-use a period; periods that ask for nothing have none."""
    return [
        {"code": f"{code}-{t}", "location": "shed", "first": t, "last": t}
        | {"units": units, "value": value, "must": True, "spends": {part: 1}}
        for t, units in enumerate(requirement)
        if units
    ]


def alone(uses, arrivals=()):
    """One scenario: the requirement is known."""
    return [{"code": "known", "probability": 1, "uses": uses, "arrivals": list(arrivals)}]


def offer(prices, periods, *, code="lot", supplier="maker", part="item", **more):
    """A part by the pack of one, to be ordered in any of the periods; `prices` as in the problem file, or a number."""
    steps = prices if isinstance(prices, list) else [{"from_packs": 1, "price": prices}]
    one = {"code": code, "supplier": supplier, "parts": {part: 1}, "location": "shed"}
    return one | {"prices": steps, "order_periods": list(periods)} | more


def frame(data, *, holding=None):
    """What all lots share: the part with its holding, the supplier with its fee an order."""
    n = len(data["requirement"])
    holding = data["holding"] if holding is None else holding
    return {
        "periods": n,
        "parts": [{"code": "item", "holding_cost": holding}],
        "locations": ["shed"],
        "suppliers": [{"code": "maker", "order_fee": per_period(data.get("setup", 0), n)}],
    }


def plain(data):
    """As it stands: a fee an order, one price, holding (a list where it differs by period), a cap an order."""
    n = len(data["requirement"])
    bought = offer(data.get("unit_cost", 0), range(n), max_packs=data.get("capacity"))
    return frame(data) | {"offers": [bought], "scenarios": alone(spent(data["requirement"]))}


def priced(data):
    """A price that changes by period: an offer per period, all with the one supplier, so that a fee is paid once."""
    offers = [offer(price, [t], code=f"lot-{t}") for t, price in enumerate(data["unit_cost"])]
    return frame(data) | {"offers": offers, "scenarios": alone(spent(data["requirement"]))}


def rising(data):
    """A price that rises after so many units of an order: incremental steps. What is in hand is stock."""
    n = len(data["requirement"])
    steps = [
        {"from_packs": 1, "price": data["cost_low"]},
        {"from_packs": data["break"] + 1, "price": data["cost_high"]},
    ]
    bought = offer(steps, range(n), price_rule="incremental")
    hand = [{"part": "item", "location": "shed", "quantity": data["initial_inventory"]}]
    return frame(data) | {"stock": hand, "offers": [bought], "scenarios": alone(spent(data["requirement"]))}


def regular_and_overtime(data):
    """Capacities that change by period: an offer per period and kind, its cap as max_packs."""
    offers = [
        offer(data[f"{kind}_cost"], [t], code=f"{kind}-{t}", max_packs=cap)
        for kind in ("regular", "overtime")
        for t, cap in enumerate(data[f"{kind}_cap"])
    ]
    return frame(data) | {"offers": offers, "scenarios": alone(spent(data["requirement"]))}


def backordered(data):
    """Served late at a price: each period's requirement is a claim part that arrives then; the uses of that period
    and of every later one spend it, worth EVERYTHING less the price a period late. Objective = EVERYTHING for each
    unit, less the published cost."""
    n = len(data["requirement"])
    problem = frame(data) | {"offers": [offer(data["unit_cost"], range(n))]}
    problem["parts"] += [{"code": f"claim-{t}"} for t in range(n)]
    arrivals = [
        {"part": f"claim-{t}", "location": "shed", "period": t, "quantity": units}
        for t, units in enumerate(data["requirement"])
    ]
    uses = [
        {"code": f"of-{t}-in-{s}", "location": "shed", "first": s, "last": s, "units": units}
        | {"value": EVERYTHING - data["backorder"] * (s - t), "spends": {"item": 1, f"claim-{t}": 1}}
        for t, units in enumerate(data["requirement"])
        for s in range(t, n)
    ]
    return problem | {"scenarios": alone(uses, arrivals)}


def shipped_together(data):
    """Several items, each with its fee, and one charge a shipment: each item has its supplier (fee = its setup), all
    deliver to the mill, and a whole trip from the mill to the shed costs the charge and carries everything."""
    items = data["items"]
    n = len(items[0]["requirement"])
    load = sum(sum(item["requirement"]) for item in items)
    return {
        "periods": n,
        "parts": [
            {"code": f"item-{k}", "holding_cost": item["holding"], "weight_lb": 1}
            for k, item in enumerate(items)
        ],
        "locations": ["mill", "shed"],
        "suppliers": [{"code": f"maker-{k}", "order_fee": item["setup"]} for k, item in enumerate(items)],
        "offers": [
            offer(0, range(n), code=f"lot-{k}", supplier=f"maker-{k}", part=f"item-{k}")
            | {"location": "mill", "whole": False}
            for k in range(len(items))
        ],
        "hauls": [{"from": "mill", "to": "shed", "trip_cost": data["shipping"], "trip_lb": load}],
        "scenarios": alone(
            [
                use
                for k, item in enumerate(items)
                for use in spent(item["requirement"], part=f"item-{k}", code=f"use-{k}")
            ]
        ),
    }
