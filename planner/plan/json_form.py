"""A report as JSON and back, by the types its records declare.

Takes a Report, gives plain dicts, lists, strings and numbers (money as text, days as ISO text), and the reverse.
Refuses a missing or unknown key with its path: a stored report of another shape is not guessed at. Only what a record
may be made without (a section that an older report did not have) may be missing.
"""

import datetime as dt
import types
import typing
from collections.abc import Mapping
from dataclasses import MISSING, fields, is_dataclass
from decimal import Decimal

from planner.plan.records import Report


class NotAReport(ValueError):
    """The stored report does not have the shape of a report; says where."""


def as_json(report):
    return _plain(report)


def report_from(data):
    return _value(data, Report, "report")


def _plain(value):
    if is_dataclass(value):
        return {field.name: _plain(getattr(value, field.name)) for field in fields(value)}
    if isinstance(value, Mapping):
        return {str(key): _plain(item) for key, item in value.items()}
    if isinstance(value, list | tuple):
        return [_plain(item) for item in value]
    if isinstance(value, Decimal):
        return str(value)
    if isinstance(value, dt.date):
        return value.isoformat()
    return value


def _value(data, kind, path):
    origin = typing.get_origin(kind)
    if origin in (types.UnionType, typing.Union):
        return None if data is None else _value(data, _some(kind), path)
    if origin is tuple:
        item = typing.get_args(kind)[0]
        return tuple(_value(each, item, f"{path}[{i}]") for i, each in enumerate(_need(data, list, path)))
    if origin is dict:
        item = typing.get_args(kind)[1]
        return {key: _value(each, item, f"{path}.{key}") for key, each in _need(data, dict, path).items()}
    if is_dataclass(kind):
        return _record(_need(data, dict, path), kind, path)
    return _scalar(data, kind, path)


def _record(data, kind, path):
    hints = typing.get_type_hints(kind)
    usual = {field.name for field in fields(kind) if field.default is not MISSING}
    for key in data.keys() ^ hints.keys():
        if key in data or key not in usual:
            raise NotAReport(f"{path}.{key}: {'unknown' if key in data else 'missing'}")
    return kind(**{key: _value(data[key], hints[key], f"{path}.{key}") for key in data})


def _scalar(data, kind, path):
    if kind is Decimal:
        return Decimal(_need(data, str, path))
    if kind is dt.date:
        return dt.date.fromisoformat(_need(data, str, path))
    if kind is float:
        return float(_need(data, int | float, path))
    return _need(data, kind, path)


def _some(union):
    return next(kind for kind in typing.get_args(union) if kind is not type(None))


def _need(data, kind, path):
    if not isinstance(data, kind):
        raise NotAReport(f"{path}: {kind} expected, got {data!r:.80}")
    return data
