"""Writes a Problem in its exact JSON form, defaults left out.

Takes a Problem; gives the JSON object or its text, which reading.py reads back to the same Problem.
"""

import json
from collections.abc import Mapping
from dataclasses import MISSING, fields, is_dataclass

KEYS = {"source": "from", "target": "to"}  # fields whose key in the file differs


def as_json(problem):
    """The problem as a JSON object."""
    return _object(problem)


def dump(problem):
    """The problem file's text."""
    return json.dumps(as_json(problem), ensure_ascii=False, indent=1, allow_nan=False) + "\n"


def _object(record):
    table = {}
    for field in fields(record):
        value = getattr(record, field.name)
        if not _is_default(field, value):
            table[KEYS.get(field.name, field.name)] = _plain(value)
    return table


def _is_default(field, value):
    if field.default is not MISSING:
        return (type(field.default) is type(value) and field.default == value) or _same_number(
            field.default, value
        )
    return field.default_factory is not MISSING and field.default_factory() == value


def _same_number(default, value):
    numbers = isinstance(default, float) and isinstance(value, int | float) and not isinstance(value, bool)
    return numbers and default == value


def _plain(value):
    if is_dataclass(value):
        return _object(value)
    if isinstance(value, Mapping):
        return {key: _plain(item) for key, item in value.items()}
    if isinstance(value, tuple | list):
        return [_plain(item) for item in value]
    if isinstance(value, float) and value.is_integer() and abs(value) < 1e15:
        return int(value)
    return value
