"""The bars of the belief check on an order page, as places on a drawing. Pure.

Takes the report's section on beliefs; gives shares of the width in per cent and heights in px, so that it fits any
screen: to the left what this order loses were the answer lower, to the right were it higher. Does not draw.
"""

from dataclasses import dataclass

from planner.beliefs.records import Belief
from planner.charts import axis
from planner.plan.words import capital, sum_words
from planner.rulers import Mark

MOST_ROWS = 8
ROW = 62  # px a row
CENTRE, REACH = 50.0, 48.0  # per cent


@dataclass(frozen=True, kw_only=True)
class BeliefRow:
    """`low` and `high`: how far the bars reach, in per cent; None where that end was not weighed."""

    belief: Belief
    name: str
    top: int
    line: int
    under: int
    low: float | None
    high: float | None
    low_said: str
    high_said: str
    is_first: bool


@dataclass(frozen=True, kw_only=True)
class BeliefsChart:
    rows: tuple[BeliefRow, ...]
    marks: tuple[Mark, ...]
    base: int
    height: int
    said: str


def beliefs_chart(section, money):
    """None where no answer would cost anything by not being known."""
    shown = [row for row in section.rows if row.regret > 0][:MOST_ROWS]
    if not shown:
        return None
    scale = axis(0, max(float(row.regret) for row in shown), most=2)
    rows = tuple(_row(at, belief, section, scale, money) for at, belief in enumerate(shown))
    base = ROW * len(rows) + 6
    return BeliefsChart(
        rows=rows,
        marks=tuple(_marks(scale)),
        base=base,
        height=base + 30,
        said=" ".join(
            f"{row.name}: {' and '.join(end for end in (row.low_said, row.high_said) if end)}."
            for row in rows
        ),
    )


def _row(at, belief, section, scale, money):
    top = ROW * at + 16
    return BeliefRow(
        belief=belief,
        name=f"{capital(belief.name)}, {belief.answered}",
        top=top,
        line=top + 14,
        under=top + 33,
        low=_reach(belief.low, scale, -1),
        high=_reach(belief.high, scale, 1),
        low_said=_said(belief.low, money),
        high_said=_said(belief.high, money),
        is_first=belief.key in section.first,
    )


def _reach(end, scale, side):
    return None if end is None else round(CENTRE + side * REACH * float(end.regret) / scale.high, 3)


def _said(end, money):
    return "" if end is None else f"{end.words}: {sum_words(end.regret, money)}"


def _marks(scale):
    """The same round steps to both sides; nothing at the middle but its line."""
    for amount in scale.steps:
        share = REACH * amount / scale.high
        last = amount == scale.high
        label = f"{amount:,.0f}"
        yield Mark(at=round(CENTRE + share, 3), label=label, anchor="end" if last else "middle")
        if amount:
            yield Mark(at=round(CENTRE - share, 3), label=label, anchor="start" if last else "middle")
