"""What follows an order as its page shows it: loads by week, evenings by week, lines in words.

Takes an AfterSection and the yards whoever looks may see (None: all); gives an AfterPage. Computes no plan.
"""

import itertools
from dataclasses import dataclass

from planner.after.records import EXTRA
from planner.plan.words import number, units_word

FULL = ", full"


@dataclass(frozen=True, kw_only=True)
class LoadRow:
    number: int
    yard_name: str
    rides: str  # in words
    extra: bool
    out: tuple[str, ...]
    out_sum: str
    home: tuple[str, ...]
    home_sum: str


@dataclass(frozen=True, kw_only=True)
class WeekRows:
    day: object
    sum: str
    rows: tuple


@dataclass(frozen=True, kw_only=True)
class AfterPage:
    section: object
    whole: bool  # all yards: also what is told of all together
    weeks: tuple[WeekRows, ...]
    bench: tuple[WeekRows, ...]
    late: tuple
    feed: tuple
    pulls: tuple
    free: tuple


def after_page(section, yards=None):
    def theirs(rows):
        return tuple(row for row in rows if yards is None or row.yard in yards)

    return AfterPage(
        section=section,
        whole=yards is None,
        weeks=tuple(_load_weeks(section, theirs(section.loads))),
        bench=tuple(_bench_weeks(section.bench.evenings)),
        late=theirs(section.late),
        feed=theirs(section.feed),
        pulls=theirs(section.pulls),
        free=theirs(section.free),
    )


def load_row(section, load):
    """One load in words."""
    return LoadRow(
        number=load.number,
        yard_name=load.yard_name,
        rides=rides_words(load),
        extra=load.rides == EXTRA,
        out=tuple(line_words(line) for line in load.out.carried),
        out_sum=_sum(section, load.out),
        home=tuple(line_words(line) for line in load.home.carried),
        home_sum=_sum(section, load.home),
    )


def rides_words(load):
    """On a due visit; an extra trip, which for a pull is only made where the visit's own load is full."""
    if load.rides != EXTRA:
        return "on a due visit"
    return (
        "extra trip, if the first is full" if any(line.full for line in load.home.carried) else "extra trip"
    )


def line_words(line):
    """30 × medium box; 12 gallons of syrup; 16 × medium box, full."""
    if line.unit in ("piece", ""):
        return f"{number(line.pieces)} × {line.name}{FULL if line.full else ''}"
    return f"{number(line.pieces)} {units_word(line.unit, many=line.pieces != 1)} {line.name}"


def _sum(section, leg):
    if not leg.carried:
        return ""
    return (
        f"{number(leg.lb)} of {number(section.truck_lb)} lb, "
        f"{leg.cubic_ft:.0f} of {number(section.truck_cubic_ft)} cubic ft"
    )


def _load_weeks(section, loads):
    for day, rows in itertools.groupby(loads, key=lambda load: load.day):
        found = tuple(load_row(section, load) for load in rows)
        yield WeekRows(day=day, sum=f"{len(found)} load{'' if len(found) == 1 else 's'}", rows=found)


def _bench_weeks(evenings):
    for day, rows in itertools.groupby(evenings, key=lambda row: row.day):
        found = tuple(rows)
        hours = sum(row.minutes for row in found) / 60
        yield WeekRows(day=day, sum=f"{hours:.1f} hours", rows=found)
