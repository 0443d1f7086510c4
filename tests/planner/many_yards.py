"""Random sizing problems in which many yards ask for the same gear in the same weeks, uses waiting for uses in tiers.

Takes a random.Random; gives a problem file's object that takes no whole numbers after the order. All figures invented.
"""

PARTS = ("nuc", "box", "comb", "grid")


def many_yards(rnd, *, yards=6, scenarios=3):
    periods = rnd.randint(4, 7)
    count = rnd.randint(1, scenarios)
    problem = {
        "periods": periods,
        "parts": [{"code": code, "end_value": rnd.choice([0, 0.5, 1])} for code in PARTS],
        "locations": ["shed", *(f"yard-{yard}" for yard in range(yards))],
        "suppliers": [{"code": "mill", "order_fee": rnd.choice([0, 12])}, {"code": "near"}],
        "offers": [_offer(rnd, code) for code in PARTS],
        "stock": [
            {"part": code, "location": "shed", "quantity": rnd.randint(0, 15)}
            for code in PARTS
            if rnd.random() < 0.6
        ],
        "scenarios": [
            {
                "code": f"year-{number}",
                "probability": 1 / count,
                "uses": [use for yard in range(yards) for use in _uses(rnd, f"yard-{yard}", periods)],
            }
            for number in range(count)
        ],
    }
    if rnd.random() < 0.4:
        problem["budget"] = rnd.choice([60, 200])
    if rnd.random() < 0.3:
        problem["bad_years"] = {"weight": 0.4, "share": 0.5}
    return problem


def _offer(rnd, code):
    offer = {
        "code": f"pack-{code}",
        "supplier": "mill",
        "parts": {code: rnd.choice([1, 4])},
        "prices": [{"from_packs": 1, "price": rnd.choice([6, 11, 17])}],
    }
    if rnd.random() < 0.3:
        offer |= {"when": "later", "supplier": "near", "order_periods": [1]}
    return offer


def _uses(rnd, yard, periods):
    """Supers with grids above them; splits that cost, the hives they grow into and their second boxes."""
    uses = []
    for number in range(rnd.randint(1, 3)):
        first = rnd.choice([1, 1, 2])
        super_ = _use(
            rnd, f"super/{yard}/{number}", yard, first, 3, rnd.choice([0, 2, 3, 5]), {"box": 1, "comb": 9}
        )
        super_["value"] = rnd.choice([8, 20, 31, 44, 60, 75.5])
        uses.append(super_)
        if rnd.random() < 0.5:
            grid = _waiting(rnd, f"grid/{yard}/{number}", super_, 3, {"grid": 1})
            uses.append(grid | {"value": rnd.choice([-3, 2, 9, 14])})
    if rnd.random() < 0.7:
        split = _use(rnd, f"split/{yard}", yard, 0, 1, rnd.choice([1, 3, 4.5]), {"nuc": 1, "comb": 5})
        hive = _waiting(rnd, f"hive/{yard}", split, periods - 1, {"box": 1, "comb": 10})
        second = _waiting(rnd, f"second/{yard}", hive, periods - 1, {"box": 1})
        uses += [
            split | {"value": -30},
            hive | {"value": 130},
            second | {"value": rnd.choice([7, 18, 26, 35])},
        ]
    if rnd.random() < 0.03:
        rnd.choice(uses)["must"] = True
    return uses


def _use(rnd, code, yard, first, last, units, keeps):
    spends = {"grid": 0.5} if rnd.random() < 0.1 else {}
    return {
        "code": code,
        "location": yard,
        "first": first,
        "last": last,
        "units": units,
        "keeps": keeps,
        "spends": spends,
    }


def _waiting(rnd, code, other, last, keeps):
    """A use that waits for another: as many as that allows, sometimes more or fewer."""
    per = rnd.choice([0.4, 0.6, 1, 1, 1.5])
    units = per * other["units"] * rnd.choice([1, 1, 1, 1, 0.5, 2])
    use = _use(rnd, code, other["location"], min(other["first"] + 1, last), last, units, keeps)
    return use | {"needs_use": other["code"], "per": per}
