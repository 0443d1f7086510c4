"""A day in the three styles keepers write: a real date cell, 2026-03-04, or with the month in letters.

Takes a raw value; gives a date, or raises Misread. A day that can be read in two ways is never guessed at.
"""

import datetime as dt
import re
import unicodedata

from inventory.sheets.faults import Misread

MONTHS = (
    "january",
    "february",
    "march",
    "april",
    "may",
    "june",
    "july",
    "august",
    "september",
    "october",
    "november",
    "december",
)
HOW = "Write it as 2026-03-04, or with the month in letters, as 4 March 2026"
ISO = re.compile(r"(\d{4})-(\d{1,2})-(\d{1,2})(?:[ T]00:00(?::00(?:\.0+)?)?)?")
DAY_FIRST = re.compile(r"(\d{1,2})(?:st|nd|rd|th)?[ .-]+(?:of )?([a-z]{3,9})\.?,?[ -]+(\d{4})")
MONTH_FIRST = re.compile(r"([a-z]{3,9})\.?[ -]+(\d{1,2})(?:st|nd|rd|th)?,?[ -]+(\d{4})")
DIGITS = re.compile(r"(\d{1,2})[/.-](\d{1,2})[/.-](\d{4})")


def day_of(value):
    """The date a raw value means."""
    if isinstance(value, dt.datetime):
        return value.date()
    if isinstance(value, dt.date):
        return value
    if not isinstance(value, str):
        raise Misread(f"{value} is not a date", f"{HOW}, or format the cell as a date")
    text = " ".join(unicodedata.normalize("NFKC", value).lower().split())
    parts = _parts(text)
    if parts is None:
        raise Misread(f"{value.strip()[:40]!r} is not a date", HOW)
    try:
        return dt.date(*parts)
    except ValueError:
        raise Misread(f"{value.strip()!r} is no day of the calendar", HOW) from None


def _parts(text):
    """Year, month, day; None where the text has none of the styles."""
    if found := ISO.fullmatch(text.upper()):
        return tuple(int(part) for part in found.groups())
    if found := DAY_FIRST.fullmatch(text):
        return _written(*found.groups())
    if found := MONTH_FIRST.fullmatch(text):
        month, day, year = found.groups()
        return _written(day, month, year)
    if found := DIGITS.fullmatch(text):
        return _digits(text, *(int(part) for part in found.groups()))
    return None


def _written(day, month, year):
    hits = [number for number, name in enumerate(MONTHS, 1) if name.startswith(month)]
    if month == "sept":
        hits = [9]
    return (int(year), hits[0], int(day)) if len(hits) == 1 else None


def _digits(text, first, second, year):
    """Day and month in figures are taken only where there is one way to read them."""
    if first == second or (first > 12 and second <= 12):
        return year, second, first
    if second > 12 >= first:
        return year, first, second
    if first > 12:
        return None
    one, other = (f"{day} {MONTHS[month - 1].title()}" for day, month in ((first, second), (second, first)))
    raise Misread(f"{text!r} may mean {one} or {other}", HOW)
