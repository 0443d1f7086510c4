"""Transport and transshipment as sizing problems.

Takes a case's data; gives the problem file. Transport: stock at the sources, hauls at a cost a unit, must-uses at the
sinks. Transshipment with least and most flow on a line: a place's goods are a part, a line is a recipe that takes a
pass (as many as the most) and leaves a stub, and a must-use spends as many stubs as the least.
"""


def transport(data):
    scale = data.get("scale", 1)
    return {
        "periods": 1,
        "parts": [{"code": "goods"}],
        "locations": data["sources"] + data["sinks"],
        "stock": [
            {"part": "goods", "location": source, "quantity": quantity}
            for source, quantity in zip(data["sources"], data["supply"], strict=True)
        ],
        "hauls": [
            {"from": source, "to": sink, "cost_per_unit": cost * scale}
            for source, row in zip(data["sources"], data["cost"], strict=True)
            for sink, cost in zip(data["sinks"], row, strict=True)
        ],
        "scenarios": [
            {
                "code": "known",
                "probability": 1,
                "uses": [
                    {"code": f"to-{sink}", "location": sink, "first": 0, "last": 0, "must": True}
                    | {"units": units, "value": 0, "spends": {"goods": 1}}
                    for sink, units in zip(data["sinks"], data["requirement"], strict=True)
                ],
            }
        ],
    }


def spent(code, part, units):
    one = {"code": code, "location": "net", "first": 0, "last": 0, "must": True}
    return one | {"units": units, "value": 0, "spends": {part: 1}}


def transshipment(data):
    arcs = {
        f"{start}-{end}": (start, end, cost, least, most) for start, end, cost, least, most in data["arcs"]
    }
    places = sorted({place for start, end, *_ in arcs.values() for place in (start, end)})
    held = {f"at-{place}": quantity for place, quantity in data["supply"].items()}
    held |= {f"pass-{arc}": most for arc, (*_, most) in arcs.items()}
    wanted = [spent(f"to-{place}", f"at-{place}", units) for place, units in data["requirement"].items()]
    wanted += [spent(f"least-{arc}", f"stub-{arc}", least) for arc, (*_, least, _) in arcs.items() if least]
    return {
        "periods": 1,
        "parts": [
            {"code": code}
            for code in [f"at-{place}" for place in places]
            + [f"{kind}-{arc}" for arc in arcs for kind in ("pass", "stub")]
        ],
        "locations": ["net"],
        "stock": [{"part": part, "location": "net", "quantity": quantity} for part, quantity in held.items()],
        "recipes": [
            {"code": arc, "takes": {f"at-{start}": 1, f"pass-{arc}": 1}, "cost": cost}
            | {"makes": {f"at-{end}": 1, f"stub-{arc}": 1}}
            for arc, (start, end, cost, *_) in arcs.items()
        ],
        "scenarios": [{"code": "known", "probability": 1, "uses": wanted}],
    }
