"""Bills of material with lead times: what must be released when, lot for lot.

Takes a case's items (lead time, stock, receipts, components, gross requirement); gives the problem file and reads the
releases back out of its plan. What has components is a recipe, the rest an offer; receipts are dated stock. Holding an
item costs more than holding all that goes into it, so that nothing is begun before it must be: the one best plan is
the lot-for-lot schedule.
"""


def holding_costs(items):
    """1 for what is bought; for what is made, 1 more than all it takes."""
    costs = {}
    while len(costs) < len(items):
        for code, item in items.items():
            takes = item.get("components", {})
            if code not in costs and all(part in costs for part in takes):
                costs[code] = 1 + sum(costs[part] * quantity for part, quantity in takes.items())
    return costs


def dated(data):
    """Stock and receipts, with our periods."""
    for code, item in data["items"].items():
        if item.get("on_hand"):
            yield {"part": code, "location": "shop", "quantity": item["on_hand"]}
        for period, quantity in item.get("scheduled_receipts", {}).items():
            ours = int(period) - data["first_period"]
            yield {"part": code, "location": "shop", "quantity": quantity, "period": ours}


def bought(code, item, periods):
    one = {"code": code, "supplier": "maker", "parts": {code: 1}, "lead_periods": item["lead_time"]}
    return one | {
        "prices": [{"from_packs": 1, "price": 1}],
        "order_periods": list(range(periods)),
        "whole": False,
    }


def schedule(data):
    items, holding = data["items"], holding_costs(data["items"])
    uses = [
        {"code": f"{code}-{period}", "location": "shop", "units": units, "value": 0, "must": True}
        | {"first": int(period) - data["first_period"], "last": int(period) - data["first_period"]}
        | {"spends": {code: 1}}
        for code, item in items.items()
        for period, units in item.get("gross", {}).items()
    ]
    return {
        "periods": data["periods"],
        "parts": [{"code": code, "holding_cost": holding[code]} for code in items],
        "locations": ["shop"],
        "stock": list(dated(data)),
        "suppliers": [{"code": "maker"}],
        "offers": [
            bought(code, item, data["periods"]) for code, item in items.items() if "components" not in item
        ],
        "recipes": [
            {"code": code, "takes": item["components"], "makes": {code: 1}, "lead_periods": item["lead_time"]}
            for code, item in items.items()
            if "components" in item
        ],
        "scenarios": [{"code": "known", "probability": 1, "uses": uses}],
    }


def releases(data, plan):
    """item -> {published period: units begun or ordered}, zeros left out."""
    found = {code: {} for code in data["items"]}
    lines = [(line["offer"], line["period"], line["packs"]) for line in plan["here_and_now"]]
    lines += [(line["recipe"], line["period"], line["units"]) for line in plan["scenarios"][0]["made"]]
    for code, period, units in lines:
        if units > 1e-6:
            found[code][str(period + data["first_period"])] = round(units, 4)
    return found
