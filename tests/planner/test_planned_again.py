"""Planning again in season: what is on the way is never bought again, and nothing changed gives the same order."""

import datetime as dt
from dataclasses import replace
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inventory.orders import OrderItem, place_order
from planner import runs
from planner.models import Run
from planner.projection import project
from planner.requirement import sizing_problem
from planner.season.assumptions import assumptions_of
from planner.season.operation import OnOrder
from planner.season.scenarios import draw
from planner.solution import solve
from tests import makers
from tests.planner import outfit
from tests.planner.operations import DAY, operation

LATER = DAY + dt.timedelta(weeks=12)
QUICK = runs.Settings(scenarios=4, seed=2, seconds=60, trial=0, nearby_seconds=0, budget=Decimal(2000))
PARTS = ("box-medium-10", "box-deep-10", "floor-10", "cover-10", "excluder-10", "sugar", "nuc-box-5")


def problem_of(whole):
    told = assumptions_of({}, start=LATER, region="north", begun=DAY)
    drawn = draw(whole, told, count=3, seed=1)
    return sizing_problem(whole, told, [project(whole, told, each) for each in drawn], budget=None)


def stock(problem):
    found: dict = {}
    for line in problem.stock:
        found[line.part] = found.get(line.part, 0) + line.quantity
    return found


orders_owed = st.lists(
    st.builds(
        OnOrder,
        part=st.sampled_from(PARTS),
        quantity=st.integers(1, 90),
        due=st.integers(-20, 200).map(lambda days: LATER + dt.timedelta(days=days)),
        reference=st.just("order 1"),
    ),
    max_size=8,
)


@settings(max_examples=15, deadline=None)
@given(owed=orders_owed)
def test_what_is_on_the_way_is_counted_once_and_not_before_it_is_due(owed):
    whole = operation(day=LATER)
    bare, coming = problem_of(whole), problem_of(replace(whole, on_order=tuple(owed)))
    wanted: dict = {}
    for line in owed:
        wanted[line.part] = wanted.get(line.part, 0) + line.quantity
    before, after = stock(bare), stock(coming)
    assert {part: after[part] - before.get(part, 0) for part in wanted} == wanted
    assert bare.scenarios == coming.scenarios  # the need is the same: only what meets it changed
    first_due = min((line.due for line in owed), default=LATER)
    weeks = [line.period for line in coming.stock if line not in bare.stock and line.period]
    assert all(LATER + dt.timedelta(weeks=week) >= first_due for week in weeks)


@pytest.fixture
def season(db):
    outfit.make_outfit()
    return outfit.make_season()


def bought(outcome):
    units: dict = {}
    for line in outcome.report.lines:
        for part in line.parts:
            units[part.part] = units.get(part.part, 0) + part.units
    return units


def test_an_order_that_is_owed_is_not_bought_again(season):
    later = replace(QUICK, begun=outfit.DAY)
    day = outfit.DAY + dt.timedelta(days=7)
    first = runs.plan_order(day, {}, later)
    assert first.report.lines
    offers = {offer.code: offer for offer in makers.Offer.objects.all()}
    for order in first.report.orders:
        items = [
            OrderItem(offer=offers[line.offer], packs=line.packs, cost=line.cost) for line in order.lines
        ]
        supplier = makers.Supplier.objects.get(code=order.supplier)
        place_order(
            supplier, items, placed_on=day, due_on=order.due_on, reference=f"{order.supplier}-{order.period}"
        )
    again = runs.plan_order(day, {}, later)
    assert sum(bought(first).values()) > 0 and first.report.spend < 2000  # no budget held anything back
    assert (bought(again), again.report.spend) == ({}, 0)  # so all that is worth its money is on the way


def shrunk(keep, stock, extra):
    """A small operation: a few colonies at some yards, so much in store of what it has."""
    whole = operation(day=LATER)
    some = tuple(group for at, group in enumerate(whole.colonies) if keep >> (at % 4) & 1)
    lines = tuple(replace(line, quantity=line.quantity * stock // 4 + extra) for line in whole.stock)
    return replace(whole, colonies=some or whole.colonies[:1], stock=lines)


@settings(max_examples=4, deadline=None)
@given(keep=st.integers(1, 15), stock=st.integers(0, 4), extra=st.integers(0, 3))
def test_any_small_operation_planned_twice_is_the_same_problem_and_the_same_order(keep, stock, extra):
    one, two = (problem_of(shrunk(keep, stock, extra)) for _ in range(2))
    assert one == two
    plans = [solve(problem, gap=0.01, seconds=60, prices=False) for problem in (one, two)]
    assert all(plan.is_order for plan in plans)
    assert plans[0].packs() == plans[1].packs()
    assert (plans[0].spend, plans[0].objective) == (plans[1].spend, plans[1].objective)


@pytest.mark.parametrize("days", [0, 110])
def test_planned_again_with_nothing_changed_it_is_the_same_plan(season, days):
    day = outfit.DAY + dt.timedelta(days=days)
    one, two = (runs.plan_order(day, {}, replace(QUICK, begun=outfit.DAY)) for _ in range(2))
    assert one.problem == two.problem
    assert (one.report.orders, one.report.spend) == (two.report.orders, two.report.spend)
    assert one.report.standing.worth == two.report.standing.worth


def test_when_nothing_is_left_to_be_ordered_the_report_says_so(season):
    day = outfit.DAY + dt.timedelta(weeks=50)
    report = runs.plan_order(day, {}, replace(QUICK, begun=outfit.DAY)).report
    assert report.lines == ()
    assert report.headline.startswith("Nothing ")
    assert "season" in report.headline


def test_a_run_of_a_later_day_keeps_the_day_the_first_day_and_what_counted_of_the_books(season):
    day = outfit.DAY + dt.timedelta(days=40)
    now = dt.datetime(2025, 3, 1, 12, tzinfo=dt.UTC)
    run = runs.ask(season, who=None, now=now, day=day, scenarios=3, trial=0)
    assert (run.day, run.begun, run.later_in_season) == (day, outfit.DAY, True)
    assert runs.settings_of(run).begun == outfit.DAY
    assert Run.objects.get().books == {}
