"""Two-stage programmes: bought before the scenario is known, used and made after it.

Takes a case's data; gives the problem file. Technology is recipes, a limit is an arrival or work minutes, a least
purchase is a must-use of a token part that comes with each pack.
"""


def offer(code, parts, price, **more):
    one = {"code": code, "supplier": "seller", "parts": parts, "whole": False}
    return one | {"prices": [{"from_packs": 1, "price": price}]} | more


def use(code, units, value, spends, *, must=False):
    one = {"code": code, "location": "here", "first": 0, "last": 0, "units": units, "value": value}
    return one | {"must": must, "spends": spends}


def arrival(part, quantity):
    return {"part": part, "location": "here", "period": 0, "quantity": quantity}


def one_period(parts, offers, scenarios, **more):
    """`scenarios`: (probability, uses, arrivals) of each."""
    return {
        "periods": 1,
        "parts": [{"code": code} for code in parts],
        "locations": ["here"],
        "suppliers": [{"code": "seller"}],
        "offers": offers,
        "scenarios": [
            {"code": f"scenario-{k}", "probability": probability, "uses": uses, "arrivals": arrivals}
            for k, (probability, uses, arrivals) in enumerate(scenarios)
        ],
    } | more


def assemble(data):
    """Resources bought now, products made later: a product is a use that spends its resources, and the scenario's
    other limits are parts that arrive in it."""
    bought = [f"resource-{r}" for r in range(len(data["resource_cost"]))]
    limits = [limit["name"] for limit in data.get("other_limits", [])]
    rows = data["bom"] + [limit["use"] for limit in data.get("other_limits", [])]
    scenarios = []
    for scenario in data["scenarios"]:
        uses = [
            use(
                f"product-{j}",
                units,
                price,
                {part: row[j] for part, row in zip(bought + limits, rows, strict=True)},
            )
            for j, (units, price) in enumerate(zip(scenario["requirement"], scenario["price"], strict=True))
        ]
        arrivals = [
            arrival(part, quantity) for part, quantity in zip(limits, scenario.get("limits", []), strict=True)
        ]
        scenarios.append((scenario["p"], uses, arrivals))
    offers = [offer(part, {part: 1}, cost) for part, cost in zip(bought, data["resource_cost"], strict=True)]
    return one_period(bought + limits, offers, scenarios)


def power(data, op_cost, loads):
    """Plants built now under a budget, run later: a plant's unit brings `plant-i` and a token `built`; running it for
    load j is a recipe; a must-use spends `built` up to the least capacity. `loads`: (probability, [load]) each."""
    plants, modes = range(len(data["invest"])), range(len(op_cost[0]))
    offers = [offer(f"plant-{i}", {f"plant-{i}": 1, "built": 1}, data["invest"][i]) for i in plants]
    recipes = [
        {"code": f"run-{i}-{j}", "takes": {f"plant-{i}": 1}, "makes": {f"load-{j}": 1}, "cost": op_cost[i][j]}
        for i in plants
        for j in modes
    ]
    least = use("least-capacity", data["min_capacity"], 0, {"built": 1}, must=True)
    scenarios = [
        (
            p,
            [least, *(use(f"load-{j}", d, 0, {f"load-{j}": 1}, must=True) for j, d in enumerate(load) if d)],
            [],
        )
        for p, load in loads
    ]
    parts = [f"plant-{i}" for i in plants] + [f"load-{j}" for j in modes] + ["built"]
    return one_period(parts, offers, scenarios, recipes=recipes, budget=data["budget"])


def three_loads(data):
    return power(data, data["op_cost"], [(s["p"], s["d"]) for s in data["scenarios"]])


def independent_loads(data):
    """Three loads, each on its own from the one law: every triple a scenario."""
    op_cost = [[cost * m for m in data["multipliers"]] for cost in data["base_cost"]]
    law = list(zip(data["marginal"]["p"], data["marginal"]["v"], strict=True))
    loads = [(p * q * r, [a, b, c]) for p, a in law for q, b in law for r, c in law]
    return power(data, op_cost, loads)


CROPS = ("wheat", "corn", "beet")


def farm(data, years=None):
    """Land as work minutes, one an acre; an acre is planted now. What an acre gives differs by year, and a recipe is
    the same in all scenarios: so each year has its own harvest recipe, which also takes that year's token, and the
    token arrives in that year only. Tons may be bought later; feed is a must-use, sales are uses, beet by quota."""
    years = years or list(zip(data["prob"], data["yields"], strict=True))
    offers = [
        offer(f"plant-{crop}", {f"acre-{crop}": 1}, cost, work_minutes=1)
        for crop, cost in zip(CROPS, data["plant_cost"], strict=True)
    ]
    offers += [
        offer(f"buy-{crop}", {f"ton-{crop}": 1}, price, when="later")
        for crop, price in zip(CROPS, data["purchase"], strict=False)
    ]
    recipes = [
        {
            "code": f"harvest-{crop}-{k}",
            "takes": {f"acre-{crop}": 1, f"year-{k}": 1},
            "makes": {f"ton-{crop}": tons},
        }
        for k, (_, row) in enumerate(years)
        for crop, tons in zip(CROPS, row, strict=True)
    ]
    plenty = data["land"] * 100
    uses = [
        use(f"feed-{crop}", tons, 0, {f"ton-{crop}": 1}, must=True)
        for crop, tons in zip(CROPS, data["need"], strict=False)
    ]
    uses += [
        use(f"sell-{crop}", plenty, price, {f"ton-{crop}": 1})
        for crop, price in zip(CROPS, data["sell"], strict=False)
    ]
    uses += [use("sell-beet", data["beet_quota"], data["sell_beet"], {"ton-beet": 1})]
    uses += [use("sell-beet-over", plenty, data["sell_beet_over"], {"ton-beet": 1})]
    scenarios = [(p, uses, [arrival(f"year-{k}", data["land"])]) for k, (p, _) in enumerate(years)]
    parts = [f"{kind}-{crop}" for crop in CROPS for kind in ("acre", "ton")]
    parts += [f"year-{k}" for k in range(len(years))]
    work = {"minutes_per_period": [data["land"]]}
    return one_period(parts, offers, scenarios, recipes=recipes, work=work)


def generators(data):
    """Two generators built now, available in part, for three loads: a unit brings `power-g` and a token `built-g`
    (least capacity as a must-use of it). A load is a claim part that arrives; serving it from g spends one claim and
    1/availability of power, and is worth what a missed unit would have cost, less running it. Expected cost =
    missed cost x expected loads - objective."""
    makers = range(len(data["invest"]))
    offers = [offer(f"built-{g}", {f"power-{g}": 1, f"built-{g}": 1}, data["invest"][g]) for g in makers]
    least = [use(f"least-{g}", data["min_cap"], 0, {f"built-{g}": 1}, must=True) for g in makers]
    laws = [data["avail1"], data["avail2"], *[data["requirement"]] * len(data["op_cost"][0])]
    scenarios = []
    for probability, drawn in joint(laws):
        available, loads = drawn[: len(makers)], drawn[len(makers) :]
        uses = least + [
            use(
                f"serve-{g}-{j}",
                load,
                data["unserved"] - data["op_cost"][g][j],
                {f"power-{g}": 1 / available[g], f"claim-{j}": 1},
            )
            for g in makers
            if available[g]
            for j, load in enumerate(loads)
        ]
        scenarios.append((probability, uses, [arrival(f"claim-{j}", load) for j, load in enumerate(loads)]))
    parts = [f"{kind}-{g}" for g in makers for kind in ("power", "built")]
    parts += [f"claim-{j}" for j in range(len(data["op_cost"][0]))]
    return one_period(parts, offers, scenarios)


def joint(laws):
    """Every joint outcome of independent laws: (probability, values)."""
    found = [(1.0, ())]
    for law in laws:
        found = [
            (p * q, (*values, value))
            for p, values in found
            for q, value in zip(law["p"], law["v"], strict=True)
        ]
    return found


def two_machines(data):
    """min 100 x1 + 150 x2 + E[q y] with x1 + x2 <= 120, x1 >= 40, x2 >= 20, 6 y1 + 10 y2 <= 60 x1,
    8 y1 + 5 y2 <= 80 x2, y <= d (matrix from memory). A unit of x brings its hours and a token for its least; the
    sum is bounded by work minutes. Objective = - the published cost."""
    offers = [
        offer("x1", {"hours-1": 60, "built-1": 1}, 100, work_minutes=1),
        offer("x2", {"hours-2": 80, "built-2": 1}, 150, work_minutes=1),
    ]
    least = [
        use("least-1", 40, 0, {"built-1": 1}, must=True),
        use("least-2", 20, 0, {"built-2": 1}, must=True),
    ]
    takes = ({"hours-1": 6, "hours-2": 8}, {"hours-1": 10, "hours-2": 5})
    scenarios = [
        (p, least + [use(f"y{j + 1}", d[j], q[j], takes[j]) for j in range(2)], [])
        for p, q, d in zip(data["prob"], data["q"], data["d"], strict=True)
    ]
    parts = ["hours-1", "hours-2", "built-1", "built-2"]
    return one_period(parts, offers, scenarios, work={"minutes_per_period": [120]})
