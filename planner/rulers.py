"""The two drawings of an order page, as places along a line: the budget's dimension line and a need's ruler. Pure.

Takes money and pieces; gives shares of the width in per cent, so that a length means an amount on any screen.
Does not draw: templates do.
"""

import itertools
import math
from dataclasses import dataclass

INSET = 0.6  # per cent left free at both ends, so that the 45° ticks stay on the sheet
MOST_LABELS = 9


@dataclass(frozen=True, kw_only=True)
class Mark:
    at: float  # per cent of the width
    label: str = ""
    minor: bool = False
    wide_only: bool = False  # left out on a phone, where labels would touch
    anchor: str = "middle"


@dataclass(frozen=True, kw_only=True)
class Ruler:
    """Marks of a round scale from 0 to `until`; `place` says where an amount stands on it."""

    until: float
    marks: tuple[Mark, ...]

    def place(self, amount):
        share = min(max(float(amount) / self.until, 0.0), 1.0)
        return round(INSET + (100 - 2 * INSET) * share, 3)


def round_step(until, most=MOST_LABELS):
    """The smallest of 1, 2, 2.5 and 5 times a power of ten that needs at most so many steps."""
    size = 10.0 ** math.floor(math.log10(until / most))
    for factor in (1, 2, 2.5, 5, 10):
        step = size * factor
        if until / step <= most + 1e-9 and (step >= 1 or until < 1) and (factor != 2.5 or step >= 25):
            return step
    return size * 10


def ruler(until, *, closes=True):
    """From 0 to exactly `until`, or, where it `closes`, on to the next round mark."""
    step = round_step(until)
    if closes:
        until = step * math.ceil(until / step - 1e-9)
    scale = Ruler(until=until, marks=())
    labels = math.floor(until / step + 1e-9)
    marks = []
    for number in range(labels + 1):
        amount, last = number * step, number * step > until - step / 3
        marks.append(
            Mark(
                at=scale.place(amount),
                label=f"{amount:,.0f}" if step >= 1 else f"{amount:,.1f}",
                wide_only=labels > 5 and number % 2 == 1,
                anchor="start" if number == 0 else "end" if last else "middle",
            )
        )
    if step >= 5:  # a fifth of a piece or of a small sum is no mark
        fifths = range(1, math.floor(until / step * 5 + 1e-9) + 1)
        marks.extend(Mark(at=scale.place(n * step / 5), minor=True) for n in fifths if n % 5)
    return Ruler(until=until, marks=tuple(sorted(marks, key=lambda mark: mark.at)))


@dataclass(frozen=True, kw_only=True)
class BudgetLine:
    """Solid from 0 to what is spent, dashed on to the limit; None where there is neither."""

    ruler: Ruler
    start: float
    spent: float
    limit: float | None
    label_at: float
    label_anchor: str


def budget_line(spend, budget):
    longest = max(float(spend), float(budget or 0))
    if longest <= 0:
        return None
    scale = ruler(longest, closes=False)
    start, spent = scale.place(0), scale.place(spend)
    inside = spent - start >= 35  # the label stands over its segment only if that is wider
    return BudgetLine(
        ruler=scale,
        start=start,
        spent=spent,
        limit=scale.place(budget) if budget is not None and budget > spend else None,
        label_at=round((start + spent) / 2, 3) if inside else spent,
        label_anchor="middle" if inside else "start",
    )


@dataclass(frozen=True, kw_only=True)
class NeedRuler:
    """Need against owned: bars end to end from 0 (x, width), the band most seasons fall in, the mean's triangle."""

    ruler: Ruler
    sound: tuple[float, float]
    coming: tuple[float, float]
    to_mend: tuple[float, float]
    band: tuple[float, float]
    need: float
    need_low: float
    need_high: float


def need_ruler(*, sound, coming, to_mend, need, low, high):
    """None where there is nothing to draw."""
    longest = max(sound + coming + to_mend, need, high)
    if longest <= 0:
        return None
    scale = ruler(longest)
    edges = [scale.place(amount) for amount in (0, sound, sound + coming, sound + coming + to_mend)]
    bars = [(left, round(right - left, 3)) for left, right in itertools.pairwise(edges)]
    low_at, high_at = scale.place(low), scale.place(high)
    return NeedRuler(
        ruler=scale,
        sound=bars[0],
        coming=bars[1],
        to_mend=bars[2],
        band=(low_at, round(high_at - low_at, 3)),
        need=scale.place(need),
        need_low=low_at,
        need_high=high_at,
    )
