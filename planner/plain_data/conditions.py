"""What a table's constraints ask of a row, worked out on its plain values so that a fault has its line.

Takes a condition as the models state it; gives a function of a row: True, False, or None where a value is not told,
as SQL has it. Asks no database.
"""

import operator
from collections.abc import Callable
from typing import Any

from django.db.models import F, Q

ORDERED = {
    "exact": operator.eq,
    "gt": operator.gt,
    "gte": operator.ge,
    "lt": operator.lt,
    "lte": operator.le,
    "in": lambda value, words: value in words,
}
Test = Callable[[tuple], bool | None]


class NotPlain(TypeError):
    """A condition that only a database can work out."""


def judge_of(condition, places):
    """The test of a condition; `places` says where in a row each name stands."""
    if isinstance(condition, Q):
        tests = [judge_of(child, places) for child in condition.children]
        whole = _any(tests) if condition.connector == Q.OR else _all(tests)
        if condition.connector not in (Q.AND, Q.OR):
            raise NotPlain(condition.connector)
        return _not(whole) if condition.negated else whole
    if isinstance(condition, tuple):
        name, wanted = condition
        return _lookup(name, wanted, places)
    raise NotPlain(type(condition).__name__)


def _lookup(name, wanted, places):
    field, _, how = name.partition("__")
    at = _place(field, places)
    if how == "isnull":
        return lambda row: (row[at] is None) == wanted
    compare = ORDERED.get(how or "exact")
    if compare is None:
        raise NotPlain(name)
    if isinstance(wanted, F):
        other = _place(wanted.deconstruct()[1][0], places)
        return lambda row: _compared(compare, row[at], row[other])
    return lambda row: _compared(compare, row[at], wanted)


def _place(name, places):
    if name not in places:
        raise NotPlain(name)
    return places[name]


def _compared(compare, value, wanted):
    return None if value is None or wanted is None else compare(value, wanted)


def _all(tests: list[Test]) -> Test:
    def whole(row: tuple) -> Any:
        found = [test(row) for test in tests]
        return False if False in found else None if None in found else True

    return whole


def _any(tests: list[Test]) -> Test:
    def whole(row: tuple) -> Any:
        found = [test(row) for test in tests]
        return True if True in found else None if None in found else False

    return whole


def _not(test: Test) -> Test:
    def other(row: tuple) -> Any:
        found = test(row)
        return None if found is None else not found

    return other
