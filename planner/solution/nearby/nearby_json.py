"""What lies next door to an order as its JSON object and back; every key is always written.

Takes a Nearby or its object; gives the other. Reads and writes no files.
"""

from dataclasses import asdict, fields

from planner.solution.nearby.records import BudgetPoint, LessMoney, Moved, Nearby


def as_json(nearby):
    """The JSON object."""
    return {
        **{field.name: getattr(nearby, field.name) for field in fields(Nearby)},
        "moves": [asdict(moved) for moved in nearby.moves],
        "points": [{**vars(point), "packs": _lines(point.packs)} for point in nearby.points],
        "less": nearby.less and {**vars(nearby.less), "changes": [list(row) for row in nearby.less.changes]},
    }


def nearby_of(data):
    """The Nearby a JSON object says."""
    less = data["less"]
    if less is not None:
        less = LessMoney(**{**less, "changes": tuple((row[0], *row[1:]) for row in less["changes"])})
    points = (BudgetPoint(**{**point, "packs": _packs(point["packs"])}) for point in data["points"])
    moves = tuple(Moved(**moved) for moved in data["moves"])
    return Nearby(**{**data, "moves": moves, "points": tuple(points), "less": less})


def _lines(packs):
    return [{"offer": offer, "period": period, "packs": count} for (offer, period), count in packs.items()]


def _packs(lines):
    return {(line["offer"], line["period"]): line["packs"] for line in lines}
