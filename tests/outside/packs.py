"""Packs that cover a requirement, and knapsacks: what to take when a limit is in stock.

Takes a case's data; gives the problem file. A knapsack's capacities are stock, its objects whole uses that spend them.
"""


def cover(data):
    """The cheapest packs that hold at least the requirement: one part, an offer a pack size, one must-use."""
    return {
        "periods": 1,
        "parts": [{"code": "frame"}],
        "locations": ["shed"],
        "suppliers": [{"code": "mill"}],
        "offers": [
            {"code": f"pack-{pack['size']}", "supplier": "mill", "parts": {"frame": pack["size"]}}
            | {"prices": [{"from_packs": 1, "price": pack["price"]}]}
            for pack in data["packs"]
        ],
        "scenarios": [
            {
                "code": "known",
                "probability": 1,
                "uses": [
                    {"code": "frames", "location": "shed", "first": 0, "last": 0, "must": True}
                    | {"units": data["requirement"], "value": 0, "spends": {"frame": 1}}
                ],
            }
        ],
    }


def knapsack(values, weights, capacities, *, copies=1):
    """`weights[r][j]`: what object j takes of limit r."""
    uses = [
        {"code": f"object-{j}", "location": "sack", "first": 0, "last": 0, "units": copies, "value": value}
        | {"spends": {f"limit-{r}": row[j] for r, row in enumerate(weights) if row[j]}}
        for j, value in enumerate(values)
    ]
    limits = [f"limit-{r}" for r in range(len(capacities))]
    return {
        "periods": 1,
        "parts": [{"code": limit} for limit in limits],
        "locations": ["sack"],
        "stock": [
            {"part": limit, "location": "sack", "quantity": capacity}
            for limit, capacity in zip(limits, capacities, strict=True)
        ],
        "whole_uses": True,
        "scenarios": [{"code": "known", "probability": 1, "uses": uses}],
    }


def one_limit(data):
    """A knapsack of one capacity; `unbounded`: as many copies as the capacity holds."""
    copies = data["capacity"] // min(data["weights"]) if data.get("unbounded") else 1
    return knapsack(data["values"], [data["weights"]], [data["capacity"]], copies=copies)


def many_limits(data):
    return knapsack(data["values"], data["A"], data["b"])
