"""The budget curve's places: to scale, never falling, the order's upright and the knee where they belong."""

import itertools
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.budget_chart import budget_chart, gain_at
from planner.plan.budget_records import BudgetPoint
from tests.planner import made


def test_places_stand_to_scale_and_the_order_at_its_budget():
    chart = budget_chart(made.make_budgets(), "USD")
    assert len(chart.places) == 12 and len(chart.lines) == 11
    wide = chart.places[-1].x - chart.places[0].x
    for at, place in enumerate(chart.places):
        assert place.x - chart.places[0].x == pytest.approx(wide * at / 11, abs=0.01)
    chosen = next(place for place in chart.places if place.chosen)
    assert (chart.mark.x, chart.mark.y) == (chosen.x, chosen.y)
    assert chart.knee == chart.places[6]
    assert (chart.mark.words, chart.mark.under) == ("budget $4,500", "the next $100 earn $41")


def test_without_a_budget_the_order_stands_at_what_it_spends():
    points = tuple(
        BudgetPoint(**{**vars(point), "chosen": False, "knee": False}) for point in made.make_budgets().points
    )
    section = made.make_budgets(
        points=points, mark=Decimal("3260.00"), next_money=None, next_earns=None, price=None
    )
    chart = budget_chart(section, "USD")
    assert chart.mark.words == "this order $3,260"
    assert (chart.mark.under, chart.knee) == ("", None)
    assert gain_at(section) == Decimal(5850)


def test_a_label_near_the_left_edge_stands_right_of_its_upright():
    assert budget_chart(made.make_budgets(mark=Decimal(500)), "USD").mark.anchor == "start"
    assert budget_chart(made.make_budgets(), "USD").mark.anchor == "end"


def test_one_budget_alone_is_no_curve():
    assert budget_chart(made.make_budgets(points=made.make_budgets().points[:1]), "USD") is None
    assert budget_chart(made.make_budgets(points=()), "USD") is None


def test_the_description_says_what_is_drawn():
    assert "A budget of $3,000 earns $5,850 a season." in budget_chart(made.make_budgets(), "USD").said


@given(st.lists(st.integers(0, 50_000), min_size=2, max_size=12))
def test_a_curve_that_never_falls_is_never_drawn_falling(gains):
    points = tuple(
        BudgetPoint(
            budget=Decimal(250 * at),
            spend=Decimal(240 * at),
            gain=Decimal(gain),
            most=Decimal(gain),
            chosen=False,
            knee=False,
        )
        for at, gain in enumerate(sorted(gains))
    )
    chart = budget_chart(made.make_budgets(points=points), "USD")
    assert all(left.y >= right.y and left.x < right.x for left, right in itertools.pairwise(chart.places))
    assert all(0 <= place.y <= chart.base and 0 <= place.x <= 100 for place in chart.places)
