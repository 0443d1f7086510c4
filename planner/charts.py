"""The two charts of an order page, as places on a drawing: the trial's spans, and the bad-years curve. Pure.

Takes sections of a report; gives shares of the width in per cent and heights in px, so that they fit any screen.
Does not draw: templates do.
"""

import itertools
import math
from dataclasses import dataclass

from planner.plan.trial_records import TrialRow
from planner.plan.words import capital, sum_words
from planner.rulers import INSET, Mark, round_step

ROW = 44  # px a row
FEW_LABELS = 5
CENT = 0.01
NEAR = 14  # per cent: labels nearer than that would touch
SHORT = {"yours": "yours", "rule": "rule of thumb", "nothing": "nothing bought", "ours": "this order"}
CURVE_HEIGHT, CURVE_TOP, CURVE_FOOT = 200, 14, 46  # px: the curve, room above it, room for its labels below
BAD_YEARS_LEFT = 16.0  # per cent


@dataclass(frozen=True, kw_only=True)
class Axis:
    """A round scale from `low` to `high`; `place` says where an amount stands, in per cent from `start`."""

    low: float
    high: float
    step: float
    start: float = INSET

    def place(self, amount):
        share = min(max((float(amount) - self.low) / (self.high - self.low), 0.0), 1.0)
        return round(self.start + (100 - INSET - self.start) * share, 3)

    @property
    def steps(self):
        count = round((self.high - self.low) / self.step)
        return [self.low + number * self.step for number in range(count + 1)]


def axis(low, high, *, most=FEW_LABELS, start=INSET):
    """Round ends at or beyond low and high; sums less than a cent apart are alike."""
    if high - low < CENT:
        low, high = low - 1, high + 1
    step = round_step(high - low, most)
    return Axis(low=step * math.floor(low / step), high=step * math.ceil(high / step), step=step, start=start)


def signed(value):
    """+1,180, −340, 0."""
    figure = f"{abs(value):,.0f}"
    if figure == "0":
        return "0"
    return f"{'+' if value > 0 else '−'}{figure}"


@dataclass(frozen=True, kw_only=True)
class SpanRow:
    """One order: its name, what it earns more than the one compared with, and the span of 19 seasons of 20."""

    row: TrialRow
    name: str
    over: str
    top: int
    line: int
    low: float
    mean: float
    high: float

    @property
    def is_ours(self):
        return self.row.key == "ours"


@dataclass(frozen=True, kw_only=True)
class TrialChart:
    rows: tuple[SpanRow, ...]
    zero: float
    zero_name: str
    name_y: int
    name_anchor: str
    marks: tuple[Mark, ...]
    base: int
    height: int
    said: str


def trial_chart(section):
    """None where there is nothing to compare."""
    shown = [row for row in section.rows if row.key != section.against]
    if not shown:
        return None
    scale = axis(min(0, *(float(row.low) for row in shown)), max(0, *(float(row.high) for row in shown)))
    rows = tuple(
        SpanRow(
            row=row,
            name=capital(row.name),
            over=signed(row.over),
            top=ROW * number + 14,
            line=ROW * number + 30,
            low=scale.place(row.low),
            mean=scale.place(row.over),
            high=scale.place(row.high),
        )
        for number, row in enumerate(shown)
    )
    base, zero = ROW * len(rows) + 8, scale.place(0)
    at_an_end = not NEAR < zero < 100 - NEAR  # its name then stands under the figures
    return TrialChart(
        rows=rows,
        zero=zero,
        zero_name=SHORT[section.against],
        marks=_marks(scale),
        base=base,
        name_y=40 if at_an_end else 22,
        name_anchor="middle" if not at_an_end else "end" if zero > 50 else "start",
        height=base + (46 if at_an_end else 28),
        said=" ".join(
            f"{each.name}: {each.over} a season, 19 seasons of 20 between {signed(each.row.low)} and "
            f"{signed(each.row.high)}."
            for each in rows
        ),
    )


def _marks(scale):
    """Labels but at zero, where the order compared with has its name; none so near it that they would touch."""
    zero = scale.place(0)
    marks = []
    for amount in scale.steps:
        at = scale.place(amount)
        near = abs(at - zero) < NEAR
        anchor = "start" if amount == scale.low else "end" if amount == scale.high else "middle"
        marks.append(Mark(at=at, label="" if near else signed(amount), anchor=anchor))
    return tuple(marks)


@dataclass(frozen=True, kw_only=True)
class CurvePlace:
    """`knee`: where the curve bends."""

    x: float
    y: float
    chosen: bool
    knee: bool = False


@dataclass(frozen=True, kw_only=True)
class CurveChart:
    """Points joined by lines over two axes."""

    places: tuple[CurvePlace, ...]
    across: tuple[Mark, ...]
    up: tuple[tuple[float, str], ...]  # height, label
    said: str
    base: int = CURVE_TOP + CURVE_HEIGHT
    height: int = CURVE_TOP + CURVE_HEIGHT + CURVE_FOOT

    @property
    def lines(self):
        return tuple(itertools.pairwise(self.places))


def bad_years_chart(section, money):
    """The mean season up, the mean of the worst share across."""
    points = section.points
    worst, mean = [float(p.bad_years) for p in points], [float(p.mean) for p in points]
    across = axis(min(worst), max(worst), most=4, start=BAD_YEARS_LEFT)
    upward = axis(min(mean), max(mean), most=4)
    return CurveChart(
        places=tuple(
            CurvePlace(x=across.place(p.bad_years), y=height_of(upward, p.mean), chosen=p.chosen)
            for p in points
        ),
        across=marks_across(across),
        up=marks_up(upward),
        said=" ".join(
            f"At {p.weight:.0%} on bad years the mean season is {sum_words(p.mean, money)} and the worst "
            f"{section.share:.0%} of seasons {sum_words(p.bad_years, money)}."
            for p in points
        ),
    )


def marks_across(scale, *, most=None):
    """A label at each step; where they are more than `most`, every second only on a wide screen."""
    thinned = most is not None and len(scale.steps) > most
    return tuple(
        Mark(
            at=scale.place(amount),
            label=_plain(amount),
            anchor="end" if amount == scale.high else "middle",
            wide_only=thinned and at % 2 == 1,
        )
        for at, amount in enumerate(scale.steps)
    )


def marks_up(scale):
    """(height, label) of each step."""
    return tuple((height_of(scale, amount), _plain(amount)) for amount in scale.steps)


def height_of(scale, amount):
    """px from the top of a curve's drawing."""
    return round(CURVE_TOP + CURVE_HEIGHT * (scale.high - float(amount)) / (scale.high - scale.low), 2)


def _plain(amount):
    return f"{amount:,.0f}".replace("-", "−")
