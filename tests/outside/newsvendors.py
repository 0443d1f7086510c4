"""One buy before the season is known: a scenario per outcome, a use worth the price, leftovers worth their salvage.

Takes a case's data; gives the problem file, and the outcomes of a law: exact for counts, else the midpoints of 400
equal slices of probability. An outcome below zero is cut to zero (nobody wants fewer than none): `lift` is what
that adds to the expected profit printed for the uncut law.
"""

import math

from scipy import stats

SLICES = 400


def law(data):
    """The continuous law of a case."""
    if data.get("dist") == "lognormal":
        return stats.lognorm(s=data["sigma"], scale=math.exp(data["mu"]))
    return stats.norm(data["mean"], data["sd"])


def midpoints(law):
    """400 equally likely outcomes: the law's quantiles at (i - 1/2)/400, none below zero."""
    return [max(0.0, float(law.ppf((i + 0.5) / SLICES))) for i in range(SLICES)]


def cut(law):
    """Mean of what the cut at zero takes away: E[max(0, -X)] of a normal law."""
    z = law.mean() / law.std()
    return float(law.std() * (stats.norm.pdf(z) - z * stats.norm.sf(z)))


def outcomes(data):
    """(probability, units wanted) pairs."""
    kind = data.get("dist")
    if kind == "discrete":
        return list(zip(data["probs"], data["values"], strict=True))
    if kind == "poisson":
        poisson = stats.poisson(data["mean"])
        last = int(poisson.ppf(1 - 1e-10))
        counted = [(float(poisson.pmf(k)), k) for k in range(last)]
        return [*counted, (float(poisson.sf(last - 1)), last)]
    return [(1 / SLICES, units) for units in midpoints(law(data))]


def prices(data):
    """(price, cost, salvage). A case told by underage u and overage o: cost o, price o + u, leftovers worth nothing,
    so that expected cost = u x mean - expected profit."""
    if "underage" in data:
        return data["overage"] + data["underage"], data["overage"], 0
    return data["price"], data["cost"], data["salvage"]


def problem(items, wanted, *, whole, budget=None):
    """`items`: code -> (price, cost, salvage); `wanted`: (probability, {code: units}) of each scenario."""
    return {
        "periods": 1,
        "parts": [{"code": code, "end_value": salvage} for code, (_, _, salvage) in items.items()],
        "locations": ["stand"],
        "suppliers": [{"code": "press"}],
        "offers": [
            {"code": f"buy-{code}", "supplier": "press", "parts": {code: 1}, "whole": whole}
            | {"prices": [{"from_packs": 1, "price": cost}]}
            for code, (_, cost, _) in items.items()
        ],
        "budget": budget,
        "scenarios": [
            {
                "code": f"outcome-{k}",
                "probability": probability,
                "uses": [
                    {"code": f"sell-{code}", "location": "stand", "first": 0, "last": 0}
                    | {"units": units, "value": items[code][0], "spends": {code: 1}}
                    for code, units in sold.items()
                ],
            }
            for k, (probability, sold) in enumerate(wanted)
        ],
    }


def single(data):
    """One item. Counts are bought whole, the rest in fractions."""
    whole = data.get("dist") in ("discrete", "poisson")
    wanted = [(probability, {"item": units}) for probability, units in outcomes(data)]
    return problem({"item": prices(data)}, wanted, whole=whole)


def shared_budget(data):
    """Several items under one budget. The objective is a sum over items, so scenario i may carry slice i of every
    item's law: only each item's own law matters."""
    laws = [midpoints(law(item)) for item in data["items"]]
    items = {f"item-{k}": prices(item) for k, item in enumerate(data["items"])}
    wanted = [(1 / SLICES, dict(zip(items, units, strict=True))) for units in zip(*laws, strict=True)]
    return problem(items, wanted, whole=False, budget=data["budget"])


def missed(law, quantity):
    """Units wanted and not there, on average, under the uncut law itself."""
    return float(law.expect(lambda units: units - quantity, lb=quantity))


def profit(law, price, cost, salvage, quantity):
    """Expected profit of a quantity under the uncut law: (p - c) mean - (c - s) left over - (p - c) missed."""
    short = missed(law, quantity)
    left = quantity - law.mean() + short
    return float((price - cost) * (law.mean() - short) - (cost - salvage) * left)
