"""A season from its answers to gear in the shed: asked for, worked out, approved, received. All gear invented."""

import datetime as dt

import pytest
from django.utils import timezone

from inventory import ledger, stock
from inventory.gear import Gear
from inventory.models import Order
from planner import queue, runs
from planner.intake import operation_as_of
from planner.models import Run
from planner.plan.json_form import report_from
from tests.planner import outfit

SMALL = {"scenarios": 6, "seed": 3, "seconds": 60, "trial": 20}


@pytest.fixture
def season(db):
    outfit.make_outfit()
    return outfit.make_season()


def worked(season, **settings):
    """A run of the season, worked as the worker does it."""
    now = timezone.now()
    asked = runs.ask(season, who=None, now=now, **{**SMALL, **settings})
    run = queue.take("test", now)
    assert run.pk == asked.pk
    beat = queue.Beat(run)
    return runs.work(run, progress=beat, cancelled=beat.cancelled)


def test_a_season_is_worked_out_approved_and_received(season):
    run = worked(season)
    assert run.status == Run.Status.DONE, run.message
    report = report_from(run.report)
    assert 0 < report.spend <= season.budget
    assert sum(order.total for order in report.orders) == report.spend

    orders = runs.approve(run, who=None, on=season.starts_on)
    assert sum(order.fee_cents + sum(line.cost_cents for line in order.lines.all()) for order in orders) == (
        report.spend * 100
    )
    for line in report.lines:
        assert (
            line.why.text
            in Order.objects.get(lines__offer__code=line.offer).lines.get(offer__code=line.offer).why
        )

    ordered = {part.part: part.units for line in report.lines for part in line.parts}
    owed = {}
    for coming in operation_as_of(season.starts_on).on_order:
        owed[coming.part] = owed.get(coming.part, 0) + coming.quantity
    assert owed == ordered

    before = stock.on_hand(outfit.shed())
    for order in orders:
        ledger.receive(order=order, into=outfit.shed(), day=order.due_on, who=None, key=f"came-{order.pk}")
    after = stock.on_hand(outfit.shed())
    for part, units in ordered.items():
        assert after[Gear(part=part)] - before.get(Gear(part=part), 0) == units
    assert operation_as_of(dt.date(2025, 12, 31)).on_order == ()


def test_what_was_approved_is_not_bought_again(season):
    first = worked(season, budget=None)
    runs.approve(first, who=None, on=season.starts_on)
    second = worked(season, budget=None)
    spent = [report_from(run.report).spend for run in (first, second)]
    assert spent[1] < spent[0] / 4
