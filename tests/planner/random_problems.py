"""Small random sizing problems that use every feature of the problem file, each by chance.

Takes a random.Random; gives a problem file's object. All figures invented.
"""


def random_problem(rnd):
    """A problem of 2 to 6 periods and 1 to 3 scenarios; feasible or not."""
    periods = rnd.randint(2, 6)
    codes = [f"part-{letter}" for letter in "abcd"[: rnd.randint(2, 4)]]
    hauled = rnd.random() < 0.35
    places = (
        ["shed", "mill", "hill"][: rnd.randint(2, 3)] if hauled else ["shed", "mill"][: rnd.randint(1, 2)]
    )
    whole = rnd.random() < 0.2
    count = 1 if whole else rnd.randint(1, 3)
    problem = {
        "periods": periods,
        "parts": [_part(rnd, code, periods) for code in codes],
        "locations": places,
        "suppliers": [_supplier(rnd, code, periods) for code in ("near", "far")[: rnd.randint(1, 2)]],
        "scenarios": [],
    }
    suppliers = [row["code"] for row in problem["suppliers"]]
    problem["offers"] = [_offer(rnd, n, codes, places, suppliers, periods) for n in range(rnd.randint(1, 4))]
    problem["recipes"] = [_recipe(rnd, n, codes, places, periods) for n in range(rnd.randint(0, 3))]
    problem["stock"] = [_held(rnd, codes, places, periods) for _ in range(rnd.randint(0, 4))]
    if rnd.random() < 0.5:
        problem["work"] = {"cost_per_hour": rnd.choice([0, 3])}
        if rnd.random() < 0.8:
            problem["work"]["minutes_per_period"] = [rnd.choice([0, 5, 12, 30]) for _ in range(periods)]
    if rnd.random() < 0.4:
        problem["budget"] = rnd.choice([0, 15, 40, 90])
    if rnd.random() < 0.4:
        problem["later_budget"] = rnd.choice([0, 10, 30])
    if rnd.random() < 0.4:
        problem["bad_years"] = {"weight": rnd.choice([0.3, 0.7, 1]), "share": rnd.choice([0.2, 0.5, 1])}
    if hauled:
        problem["hauls"] = [_haul(rnd, places) for _ in range(rnd.randint(1, 4))]
    problem["whole_uses"] = whole
    for number in range(count):
        problem["scenarios"].append(_scenario(rnd, number, count, codes, places, periods, whole))
    return problem


def _part(rnd, code, periods):
    part = {"code": code, "weight_lb": rnd.choice([0, 1, 4])}
    if rnd.random() < 0.4:
        part["end_value"] = rnd.choice([-0.5, 0.3, 0.6])
    roll = rnd.random()
    if roll < 0.2:
        part["holding_cost"] = 0.2
    elif roll < 0.35:
        part["holding_cost"] = [rnd.choice([0, 0.1, 0.5]) for _ in range(periods)]
    return part


def _supplier(rnd, code, periods):
    supplier = {"code": code}
    if rnd.random() < 0.6:
        supplier["order_fee"] = rnd.choice([4, [rnd.choice([0, 3, 9]) for _ in range(periods)]])
    if rnd.random() < 0.4:
        supplier["free_from"] = rnd.choice([0, 12, 25])
    return supplier


def _offer(rnd, number, codes, places, suppliers, periods):
    inside = rnd.sample(codes, rnd.randint(1, 2))
    steps = [{"from_packs": 1, "price": rnd.choice([3, 5.5, 8])}]
    for _ in range(rnd.choice([0, 0, 1, 2])):
        last = steps[-1]
        price = round(last["price"] * rnd.choice([0.7, 0.85, 1.2]), 3)
        steps.append({"from_packs": last["from_packs"] + rnd.randint(1, 5), "price": price})
    offer = {
        "code": f"offer-{number}",
        "supplier": rnd.choice(suppliers),
        "parts": {part: rnd.choice([1, 2, 2.5]) for part in inside},
        "prices": steps,
        "price_rule": rnd.choice(["all_units", "incremental"]),
        "order_periods": sorted(rnd.sample(range(periods), rnd.randint(1, min(3, periods)))),
        "lead_periods": rnd.choice([0, 0, 1]),
        "when": rnd.choice(["now", "now", "later"]),
        "location": rnd.choice(places),
    }
    if rnd.random() < 0.3:
        offer["max_packs"] = rnd.choice([0, 2, 3.5, 6])
    if rnd.random() < 0.3:
        offer["work_minutes"] = rnd.choice([1, 4])
    if rnd.random() < 0.4:
        offer["whole"] = rnd.random() < 0.5
    return offer


def _recipe(rnd, number, codes, places, periods):
    taken = rnd.choice(codes)
    made = rnd.choice([code for code in codes if code != taken])
    recipe = {
        "code": f"recipe-{number}",
        "takes": {taken: rnd.choice([1, 2])},
        "makes": {made: rnd.choice([0.5, 1])},
        "work_minutes": rnd.choice([0, 2, 5]),
        "lead_periods": rnd.choice([0, 0, 0, 1]),
        "cost": rnd.choice([0, 0.4]),
        "location": rnd.choice(places),
    }
    if rnd.random() < 0.2:
        recipe["takes"][rnd.choice(codes)] = 1
    return recipe


def _held(rnd, codes, places, periods):
    period = rnd.choice([0, 0, rnd.randrange(periods)])
    return {
        "part": rnd.choice(codes),
        "location": rnd.choice(places),
        "period": period,
        "quantity": rnd.randint(0, 6),
    }


def _haul(rnd, places):
    source, target = rnd.sample(places, 2)
    haul = {
        "from": source,
        "to": target,
        "cost_per_unit": rnd.choice([0, 0.3]),
        "cost_per_lb": rnd.choice([0, 0.1]),
    }
    if rnd.random() < 0.5:
        haul |= {"trip_lb": rnd.choice([5, 12]), "trip_cost": rnd.choice([0, 2, 5])}
    return haul


def _scenario(rnd, number, count, codes, places, periods, whole):
    uses = []
    for at in range(rnd.randint(1, 5)):
        first = rnd.randrange(periods)
        use = {
            "code": f"use-{at}",
            "location": rnd.choice(places),
            "first": first,
            "last": rnd.randrange(first, periods),
            "units": rnd.randint(0, 5) if whole else rnd.choice([1, 2.5, 4]),
            "value": rnd.choice([-1, 4, 9, 15, 30]),
            "must": rnd.random() < 0.12,
            "keeps": {rnd.choice(codes): rnd.choice([1, 2])} if rnd.random() < 0.7 else {},
            "spends": {rnd.choice(codes): rnd.choice([1, 1.5])} if rnd.random() < 0.5 else {},
        }
        if uses and rnd.random() < 0.25:
            use["needs_use"], use["per"] = rnd.choice(uses)["code"], rnd.choice([0.5, 1, 2])
        uses.append(use)
    arrivals = [_held(rnd, codes, places, periods) for _ in range(rnd.randint(0, 2))]
    return {"code": f"year-{number}", "probability": 1 / count, "uses": uses, "arrivals": arrivals}
