"""One value as the text of a cell and back, exactly, whatever the column's type.

Takes a model's field; gives a Codec. Days and times are ISO 8601 with their zone, decimals have a point, yes and no
are words. Text that a spreadsheet would take for a formula gets an apostrophe in front; so does text that begins
with one, so that taking one away always gives back what was there.
"""

import datetime as dt
import functools
import json
import math
import re
from collections.abc import Callable
from dataclasses import dataclass
from decimal import Decimal
from typing import Any

from django.core.exceptions import ValidationError
from django.core.validators import DecimalValidator, MaxLengthValidator, MaxValueValidator, MinValueValidator
from django.db import models

from planner.plain_data.faults import CellFault

GUARDED = tuple("=+-@\t\r\n'＝＋－＠")
LONGEST_CELL = 30_000  # letters; more is cut by spreadsheets, so longer documents get a file of their own
DOCUMENTS = "documents/"
CHECKED = (MinValueValidator, MaxValueValidator, MaxLengthValidator, DecimalValidator)
REMEMBERED = 4096
WHOLE = re.compile(r"-?[0-9]{1,19}")
DECIMAL = re.compile(r"-?[0-9]+(\.[0-9]+)?")
DAY = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")


@dataclass(frozen=True, kw_only=True)
class Codec:
    """How a column's values are written and read; `word` is its type as the dictionary says it."""

    word: str
    write: Callable[[Any], str]
    read: Callable[[str], Any]


@functools.cache
def codec_of(field):
    """The codec of a field, for values as the database gives them and takes them."""
    plain = field.target_field if field.remote_field else field
    word, write, read = _of_type(plain)
    return Codec(word=word, write=_empty_or(write), read=_checked(field, plain, read, word))


def guarded(text):
    return f"'{text}" if text.startswith(GUARDED) else text


def unguarded(text):
    return text[1:] if text.startswith("'") else text


def document(value):
    """The JSON text of a document, the same for equal ones whichever database kept it."""
    return json.dumps(_steady(value), ensure_ascii=False, sort_keys=True)


def _steady(value):
    """PostgreSQL keeps no sign of a zero: 0.0 for -0.0."""
    if isinstance(value, dict):
        return {key: _steady(inner) for key, inner in value.items()}
    if isinstance(value, list):
        return [_steady(inner) for inner in value]
    return 0.0 if isinstance(value, float) and value == 0 else value


def _of_type(plain):
    for kinds, word, write, read in TYPES:
        if isinstance(plain, kinds):
            return word, write, read
    raise TypeError(f"no way to write a {type(plain).__name__} ({plain}): name one in cells.py")


def _empty_or(write):
    return lambda value: "" if value is None else write(value)


def _checked(field, plain, read, word):
    """Reads what is there, refuses what the column cannot hold."""
    is_text = isinstance(plain, models.CharField | models.TextField)
    allowed = {str(value) for value, _label in field.flatchoices}
    limits = [one for one in field.validators if isinstance(one, CHECKED)]

    def value_of(text):
        if text == "" and not is_text:
            if field.null:
                return None
            raise CellFault("nothing stands there", f"write {_example(word)}")
        value = read(text)
        if allowed and value not in allowed and not (value == "" and field.blank):
            raise CellFault(f"{value!r} is no word of this column", f"one of: {', '.join(sorted(allowed))}")
        for limit in limits:
            _within(limit, value)
        return value

    if isinstance(plain, models.JSONField) or (is_text and not allowed):
        return value_of
    return functools.lru_cache(maxsize=REMEMBERED)(value_of)


def _within(limit, value):
    try:
        limit(value)
    except ValidationError as error:
        what = " ".join(error.messages).rstrip(".")
        raise CellFault(f"{_short(value)} cannot stand there", what[:1].lower() + what[1:]) from None


def _example(word):
    return EXAMPLES.get(word, "a value")


def _short(value):
    text = str(value)
    return repr(text if len(text) <= 40 else f"{text[:40]}…")


def _read_text(text):
    if "\0" in text:
        raise CellFault("there is a zero character in the text", "take it out")
    return unguarded(text)


def _read_whole(text):
    if not WHOLE.fullmatch(text):
        raise CellFault(f"{_short(text)} is no whole number", f"write {EXAMPLES['whole number']}")
    return int(text)


def _read_decimal(text):
    if not DECIMAL.fullmatch(text):
        raise CellFault(f"{_short(text)} is no number", f"write {EXAMPLES['decimal']}")
    return Decimal(text)


def _read_float(text):
    try:
        number = float(text)
    except ValueError:
        number = math.nan
    if math.isnan(number) or text != text.strip():
        raise CellFault(f"{_short(text)} is no number", f"write {EXAMPLES['number']}")
    return number


def _read_yes_no(text):
    if text not in ("yes", "no"):
        raise CellFault(f"{_short(text)} is neither yes nor no", "write yes or no")
    return text == "yes"


def _read_day(text):
    try:
        if DAY.fullmatch(text):
            return dt.date.fromisoformat(text)
    except ValueError:
        pass
    raise CellFault(f"{_short(text)} is no day", f"write {EXAMPLES['day']}")


def _read_moment(text):
    try:
        moment = dt.datetime.fromisoformat(text)
    except ValueError:
        moment = None
    if moment is None or moment.tzinfo is None:
        raise CellFault(f"{_short(text)} is no time with its zone", f"write {EXAMPLES['time']}")
    try:
        return moment.astimezone(dt.UTC)
    except OverflowError:
        raise CellFault(f"{_short(text)} lies outside the calendar", f"write {EXAMPLES['time']}") from None


def _write_moment(moment):
    return moment.astimezone(dt.UTC).isoformat(timespec="microseconds")


def _read_document(text):
    try:
        return json.loads(unguarded(text), parse_constant=_no_constant)
    except (ValueError, RecursionError):
        raise CellFault(f"{_short(text)} is no JSON", 'write JSON, as {"splits": 12}') from None


def _no_constant(word):
    raise ValueError(word)


EXAMPLES = {
    "whole number": "a whole number, as 12",
    "decimal": "a number with a decimal point, as 12.50",
    "number": "a number, as 0.001",
    "yes or no": "yes or no",
    "day": "a day as 2026-11-30",
    "time": "a time with its zone, as 2026-11-30T19:05:00.000000+00:00",
    "document": "JSON, as {}",
}
TYPES: tuple[tuple[Any, str, Callable, Callable], ...] = (
    (models.BooleanField, "yes or no", lambda value: "yes" if value else "no", _read_yes_no),
    (models.DateTimeField, "time", _write_moment, _read_moment),
    (models.DateField, "day", lambda day: day.isoformat(), _read_day),
    (models.DecimalField, "decimal", lambda number: f"{number:f}", _read_decimal),
    (models.FloatField, "number", repr, _read_float),
    (models.IntegerField, "whole number", str, _read_whole),
    (models.JSONField, "document", lambda value: guarded(document(value)), _read_document),
    ((models.CharField, models.TextField), "text", guarded, _read_text),
)
