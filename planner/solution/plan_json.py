"""A plan as its JSON object and back; every key is always written.

Takes a Plan or its object; gives the other. Reads and writes no files.
"""

from collections.abc import Mapping
from dataclasses import fields, is_dataclass

from planner.solution import records

KEYS = {"source": "from", "target": "to"}
LISTS = {
    "here_and_now": records.PackLine,
    "fees": records.FeeLine,
    "scenarios": records.ScenarioPlan,
    "later": records.LaterLine,
    "served": records.UseLine,
    "short": records.UseLine,
    "made": records.MadeLine,
    "hauled": records.HauledLine,
    "trips": records.TripLine,
}


def as_json(plan):
    """The plan's JSON object."""
    return _plain(plan)


def plan_of(data):
    """The Plan a JSON object says."""
    return _record(records.Plan, data)


def _plain(value):
    if is_dataclass(value):
        return {
            KEYS.get(field.name, field.name): _plain(getattr(value, field.name)) for field in fields(value)
        }
    if isinstance(value, Mapping):
        return {key: _plain(item) for key, item in value.items()}
    if isinstance(value, tuple | list):
        return [_plain(item) for item in value]
    if isinstance(value, float) and value.is_integer() and abs(value) < 1e15:
        return int(value)
    return value


def _record(kind, data):
    values = {}
    for field in fields(kind):
        value = data[KEYS.get(field.name, field.name)]
        if field.name == "shadow_prices":
            value = value and _prices(value)
        elif field.name in LISTS and isinstance(value, list) and kind is not records.TripLine:
            value = tuple(_record(LISTS[field.name], row) for row in value)
        elif isinstance(value, list):
            value = tuple(value)
        values[field.name] = value
    return kind(**values)


def _prices(data):
    work = {code: tuple(row) for code, row in data["work"].items()}
    return records.ShadowPrices(
        budget=data["budget"], later_budget=data["later_budget"], work=work, parts=data["parts"]
    )
