"""Where ISO weeks fall in the 52 weeks after the order, and when the keeper comes by.

Takes dates and week numbers, gives periods 0..51. No month and no hemisphere is known here.
"""

import datetime as dt
from dataclasses import dataclass
from functools import lru_cache


@lru_cache(maxsize=64)
def iso_weeks(start, weeks):
    """The ISO week of each period; a period is told by its fourth day, so a week is met by most of its days."""
    return tuple((start + dt.timedelta(days=7 * t + 3)).isocalendar().week for t in range(weeks))


@lru_cache(maxsize=4096)
def period_of(start, weeks, iso_week):
    """The first period in that ISO week; a week the 52 leave out (a 53rd) counts as the one before."""
    told = iso_weeks(start, weeks)
    for back in range(53):
        week = (iso_week - back - 1) % 53 + 1
        if week in told:
            return told.index(week)
    raise AssertionError("no ISO week within the year")


def due_period(assumptions, iso_week, *, late_weeks):
    """The period in which what is usual in that week is done: where the season passed the week a while ago, at once."""
    period = period_of(assumptions.start, assumptions.weeks, iso_week)
    is_late = period >= assumptions.season_weeks and weeks_since(assumptions, iso_week) <= late_weeks
    return 0 if is_late else period


def weeks_since(assumptions, iso_week):
    """Weeks since that week of the year was last; 1 is last week."""
    back = (assumptions.start - dt.timedelta(days=7 * week) for week in range(1, 54))
    for gone, start in enumerate(back, 1):
        if iso_weeks(start, 1)[0] == iso_week:
            return gone
    return assumptions.weeks  # a 53rd week, and no year behind has one


def is_ahead(assumptions, period):
    """True for what begins while the season lasts; what a season under way has behind it comes again only after it."""
    return period < assumptions.season_weeks


def day_of(start, period):
    """First day of a period."""
    return start + dt.timedelta(days=7 * period)


@dataclass(frozen=True, kw_only=True)
class Piece:
    """The part of a flow window inside the horizon: periods first..last, the share of its weeks gone before."""

    first: int
    last: int
    gone_weeks: int
    of_weeks: int


@lru_cache(maxsize=1024)
def piece_of(start, weeks, window):
    """A flow in the year ahead. One that is on at the start is cut to what remains; what of it would fall into the last
    weeks is left out: its honey would be off only after the year, and its gear can still be ordered next winter."""
    length = (window.last_week - window.first_week) % 52 + 1
    first = period_of(start, weeks, window.first_week)
    last = first + length - 1
    if last < weeks:
        return Piece(first=first, last=last, gone_weeks=0, of_weeks=length)
    still = period_of(start, weeks, window.last_week)
    if still < length - 1:
        return Piece(first=0, last=still, gone_weeks=length - 1 - still, of_weeks=length)
    return Piece(first=first, last=weeks - 1, gone_weeks=0, of_weeks=length)


@dataclass(frozen=True, kw_only=True)
class Circuit:
    """Visits to one yard: every `step` weeks from the start."""

    step: int
    weeks: int

    def before(self, period):
        """The last visit up to that period."""
        return max(0, period // self.step * self.step)

    def after(self, period):
        """The first visit from that period on, at the latest the last week."""
        return min(self.weeks - 1, -(-period // self.step) * self.step)


def circuit_of(yard, assumptions):
    """The yard's own interval where it has one, else the season's."""
    return _circuit(yard.visit_every_days or assumptions.circuit_days, assumptions.weeks)


@lru_cache(maxsize=256)
def _circuit(days, weeks):
    return Circuit(step=max(1, round(days / 7)), weeks=weeks)


@dataclass(frozen=True, kw_only=True)
class Turns:
    """Periods at which colonies are found missing: dead in summer, united in autumn, dead in winter."""

    summer: int
    autumn: int
    winter: int


def turns_of(assumptions):
    """Winter's dead are found at the first look in spring, summer's half-way to the autumn feeding, before which the
    weak are united. A summer that is past its half counts what is left of it as its autumn."""
    return _turns(assumptions.start, assumptions.weeks, assumptions.spring_week, assumptions.autumn_feed_week)


@lru_cache(maxsize=256)
def _turns(start, weeks, spring_week, autumn_feed_week):
    winter = period_of(start, weeks, spring_week)
    autumn = period_of(start, weeks, autumn_feed_week)
    summer_weeks = (autumn_feed_week - spring_week) % 52
    half = (spring_week + summer_weeks // 2 - 1) % 52 + 1
    summer = period_of(start, weeks, half)
    if autumn < winter:
        summer = min(summer, autumn)
    return Turns(summer=max(summer, winter) if winter < autumn else summer, autumn=autumn, winter=winter)


def summers_end_first(assumptions):
    """True where the autumn comes before the next spring: an order placed in summer."""
    turns = turns_of(assumptions)
    return turns.autumn < turns.winter


def summer_left(assumptions):
    """Share of the bees' summer, from the first look to autumn feeding, that still lies ahead."""
    turns = turns_of(assumptions)
    if turns.autumn >= turns.winter:
        return 1.0
    return min(1.0, turns.autumn / max(1, (assumptions.autumn_feed_week - assumptions.spring_week) % 52))
