"""Random sizing problems full of workshops: chains of recipes, tight minutes, tokens that come with a flow.

Takes a random.Random; gives a problem file's object, feasible with an order of nothing. All figures invented.
"""

PARTS = ("raw", "flat", "box", "sheet", "frame", "token", "comb")


def workshop(rnd):
    """A problem of 5 to 12 periods and 1 or 2 scenarios, with 2 to 6 recipes."""
    periods = rnd.randint(5, 12)
    count = rnd.choice([1, 1, 2])
    limited = rnd.random() < 0.8
    problem = {
        "periods": periods,
        "parts": [_part(rnd, code, periods) for code in PARTS],
        "locations": ["shed"],
        "suppliers": [{"code": "mill"}],
        "offers": [_offer(rnd, number, periods) for number in range(rnd.randint(2, 5))],
        "recipes": [_recipe(rnd, number) for number in range(rnd.randint(2, 6))],
        "stock": [_held(rnd, periods) for _ in range(rnd.randint(0, 4))],
        "work": {"cost_per_hour": rnd.choice([0, 0, 6])},
        "scenarios": [_scenario(rnd, number, count, periods) for number in range(count)],
    }
    if limited:
        problem["work"]["minutes_per_period"] = [rnd.choice([0, 3, 6, 10, 20]) for _ in range(periods)]
    return problem


def _part(rnd, code, periods):
    part = {"code": code}
    if rnd.random() < 0.3:
        part["end_value"] = rnd.choice([-0.3, 0.2, 0.5])
    if rnd.random() < 0.04:
        part["holding_cost"] = rnd.choice([0.05, [rnd.choice([0, 0.1]) for _ in range(periods)]])
    return part


def _offer(rnd, number, periods):
    offer = {
        "code": f"offer-{number}",
        "supplier": "mill",
        "parts": {part: rnd.choice([1, 2]) for part in rnd.sample(PARTS[:5], rnd.choice([1, 1, 2]))},
        "prices": [{"from_packs": 1, "price": rnd.choice([2, 4, 6])}],
        "order_periods": sorted(rnd.sample(range(periods), rnd.randint(1, 3))),
        "lead_periods": rnd.choice([0, 0, 1, 2]),
        "when": rnd.choice(["now", "later"]),
        "whole": rnd.random() < 0.2,
    }
    if rnd.random() < 0.3:
        offer["max_packs"] = rnd.choice([1, 3])
    if rnd.random() < 0.15:
        offer["work_minutes"] = rnd.choice([1, 4])
    return offer


def _recipe(rnd, number):
    """Mostly down the list of parts; sometimes back up, so that recipes may feed each other in a ring."""
    places = sorted(rnd.sample(range(len(PARTS)), 3), reverse=rnd.random() < 0.15)
    taken = [PARTS[place] for place in places[: rnd.choice([1, 1, 2])]]
    made = [PARTS[place] for place in places[2 : 2 + rnd.choice([1, 1, 1, 2])]] or [PARTS[places[-1]]]
    recipe = {
        "code": f"recipe-{number}",
        "takes": {part: rnd.choice([1, 1, 2]) for part in taken},
        "makes": {part: rnd.choice([1, 1, 0.5]) for part in made},
        "work_minutes": rnd.choice([0, 0, 2, 5]),
        "lead_periods": rnd.choice([0, 0, 0, 0, 0, 1, 2]),
        "cost": rnd.choice([0, 0.3, 1]),
    }
    if rnd.random() < 0.1:  # a tool that is given back, more or fewer of it
        recipe["takes"]["token"] = 1
        recipe["makes"]["token"] = rnd.choice([1, 0.5])
    return recipe


def _held(rnd, periods):
    return {
        "part": rnd.choice(PARTS),
        "location": "shed",
        "period": rnd.choice([0, rnd.randrange(periods)]),
        "quantity": rnd.randint(1, 6),
    }


def _scenario(rnd, number, count, periods):
    uses = []
    for at in range(rnd.randint(3, 9)):
        first = rnd.randrange(periods)
        parts = rnd.sample(PARTS, 2)
        use = {
            "code": f"use-{at}",
            "location": "shed",
            "first": first,
            "last": rnd.randrange(first, periods),
            "units": rnd.choice([1, 2.5, 4]),
            "value": rnd.choice([4, 9, 15, 30]),
            "keeps": {parts[0]: rnd.choice([1, 2])} if rnd.random() < 0.8 else {},
            "spends": {parts[1]: 1} if rnd.random() < 0.4 else {},
        }
        if uses and rnd.random() < 0.15:
            use["needs_use"] = rnd.choice(uses)["code"]
        uses.append(use)
    tokens = [_held(rnd, periods) | {"part": "token"} for _ in range(rnd.randint(0, 3))]
    arrivals = [_held(rnd, periods) for _ in range(rnd.randint(0, 2))] + tokens
    return {"code": f"year-{number}", "probability": 1 / count, "uses": uses, "arrivals": arrivals}
