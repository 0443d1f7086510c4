"""The year of a yard as a drawing: its flow windows over the weeks. Pure: no table, no clock.

Takes windows (name, first_week, last_week, gain_lb) and the day; gives bars whose width is their weeks and whose
height is lb a week, so that a bar's area is what a full colony gains. Across in per cent, upright in px.
"""

from dataclasses import dataclass
from datetime import date, timedelta

TALLEST = 90
GROUND = 150
LABEL_WIDTH = 15.0  # per cent of the year a label takes


@dataclass(frozen=True, kw_only=True)
class Bar:
    name: str
    gain_lb: int
    weeks: int
    parts: tuple[tuple[float, float], ...]  # (left, width); two where the window runs over New Year
    top: int
    height: int
    middle: float
    label: int


@dataclass(frozen=True, kw_only=True)
class FlowYear:
    bars: tuple[Bar, ...]
    months: tuple[dict, ...]
    today: float
    sum_lb: int


def weeks_of(year):
    """52 or 53: the weeks of a year by the calendar that numbers weeks."""
    return date(year, 12, 28).isocalendar().week


def share_of(day, year):
    """Where in its year a day lies, in per cent."""
    start, end = date(year, 1, 1), date(year + 1, 1, 1)
    return round(min(max((day - start) / (end - start), 0.0), 1.0) * 100, 2)


def span_of(window, year):
    """(left, right) of a window in per cent; right lies before left where it runs over New Year."""
    last = weeks_of(year)
    first_day = date.fromisocalendar(year, min(window.first_week, last), 1)
    end_day = date.fromisocalendar(year, min(window.last_week, last), 7) + timedelta(days=1)
    return share_of(first_day, year), share_of(end_day, year)


def weeks_in(window, year):
    """How many weeks a window lasts."""
    last = weeks_of(year)
    weeks = min(window.last_week, last) - min(window.first_week, last) + 1
    return weeks if weeks > 0 else weeks + last


def flow_year(windows, *, today):
    """The drawing of all windows of one yard in the year of `today`."""
    year = today.year
    highest = max((float(window.gain_lb) / weeks_in(window, year) for window in windows), default=0) or 1
    bars: list[Bar] = []
    for window in sorted(windows, key=lambda window: window.first_week):
        bars.append(_bar(window, year, TALLEST / highest, bars))
    months = tuple(
        {"left": share_of(date(year, month, 1), year), "middle": share_of(date(year, month, 15), year)}
        | {"word": f"{date(year, month, 1):%b}", "letter": f"{date(year, month, 1):%b}"[0]}
        for month in range(1, 13)
    )
    total = round(sum(window.gain_lb for window in windows))
    return FlowYear(bars=tuple(bars), months=months, today=share_of(today, year), sum_lb=total)


def _bar(window, year, px_a_lb, before):
    left, right = span_of(window, year)
    weeks = weeks_in(window, year)
    parts = ((left, right - left),) if right > left else ((left, 100 - left), (0.0, right))
    height = round(float(window.gain_lb) / weeks * px_a_lb)
    widest = max(parts, key=lambda part: part[1])
    middle = min(max(widest[0] + widest[1] / 2, LABEL_WIDTH / 2), 100 - LABEL_WIDTH / 2)
    label = GROUND - height - 8
    for other in before:
        if abs(other.middle - middle) < LABEL_WIDTH and abs(other.label - label) < 36:
            label = min(label, other.label - 36)
    return Bar(
        name=window.name,
        gain_lb=round(window.gain_lb),
        weeks=weeks,
        parts=tuple((round(a, 2), round(b, 2)) for a, b in parts),
        top=GROUND - height,
        height=height,
        middle=round(middle, 2),
        label=label,
    )
