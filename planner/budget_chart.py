"""The budget curve of an order page, as places on a drawing. Pure.

Takes the report's section on other budgets; gives shares of the width in per cent and heights in px, so that it fits
any screen. Does not draw: templates do.
"""

from dataclasses import dataclass

from planner.charts import (
    FEW_LABELS,
    CurveChart,
    CurvePlace,
    axis,
    height_of,
    marks_across,
    marks_up,
)
from planner.plan.words import sum_words

LEFT = 13.0  # per cent
LINE = 18  # px between two lines of the order's label
ROOM = 34.0  # per cent that the order's label takes


@dataclass(frozen=True, kw_only=True)
class OrderMark:
    """The upright at this order's budget, its label at the side that has room."""

    x: float
    y: float
    anchor: str
    shift: int  # px from the upright to its label
    label_y: int
    words: str
    under: str


@dataclass(frozen=True, kw_only=True)
class BudgetChart(CurveChart):
    mark: OrderMark

    @property
    def knee(self):
        return next((place for place in self.places if place.knee), None)


def budget_chart(section, money):
    """None where fewer than two budgets are known."""
    points = section.points
    if len(points) < 2:
        return None
    budgets = [float(point.budget) for point in points]
    across = axis(min(0.0, *budgets), max(*budgets, float(section.mark)), most=6, start=LEFT)
    upward = axis(0, float(points[-1].gain), most=4)
    return BudgetChart(
        places=tuple(
            CurvePlace(
                x=across.place(point.budget),
                y=height_of(upward, point.gain),
                chosen=point.chosen,
                knee=point.knee,
            )
            for point in points
        ),
        mark=_mark(section, money, across, upward),
        across=marks_across(across, most=FEW_LABELS),
        up=marks_up(upward),
        said=" ".join(
            f"A budget of {sum_words(point.budget, money)} earns {sum_words(point.gain, money)} a season."
            for point in points
        ),
    )


def _mark(section, money, across, upward):
    x = across.place(section.mark)
    left = x > LEFT + ROOM  # room on the left of the upright
    under = ""
    if section.next_money is not None and section.next_earns is not None:
        earns = sum_words(section.next_earns, money) if section.next_earns >= 1 else "nothing"
        under = f"the next {sum_words(section.next_money, money)} earn {earns}"
    chosen = any(point.chosen for point in section.points)
    words = f"{'budget' if chosen else 'this order'} {sum_words(section.mark, money)}"
    return OrderMark(
        x=x,
        y=height_of(upward, gain_at(section)),
        anchor="end" if left else "start",
        shift=-8 if left else 8,
        label_y=BudgetChart.base - 2 * LINE - 14,
        words=words,
        under=under,
    )


def gain_at(section):
    """What the curve earns at this order's place: that of the biggest budget not past it."""
    within = [point.gain for point in section.points if point.budget <= section.mark]
    return max(within, default=section.points[0].gain)
