"""Answers and books at the edge, from the season to the order's page: a sensible order or a clear sentence, no crash."""

import datetime as dt
import io
from dataclasses import replace
from decimal import Decimal
from functools import lru_cache

import pytest
from django.urls import reverse
from django.utils import timezone
from openpyxl import load_workbook

from planner.models import Run
from planner.plan import report_of
from planner.plan.json_form import as_json
from planner.plan.text import as_text
from planner.projection import project
from planner.requirement import sizing_problem
from planner.season.assumptions import assumptions_of
from planner.season.scenarios import draw
from planner.solution import solve
from planner.workbook import workbook_of
from tests.planner import made
from tests.planner.operations import DAY, operation

YARDS = ("shed", "alder", "birch")


def small_operation(**changes):
    """The shed and two yards of the invented operation, with 29 colonies."""
    whole = operation()
    few = {
        "yards": tuple(yard for yard in whole.yards if yard.code in YARDS),
        "colonies": tuple(group for group in whole.colonies if group.yard in YARDS),
    }
    return replace(whole, **{**few, **changes})


def season_of(whole, **answers):
    told = assumptions_of(answers, start=whole.day, region="north", operation=whole)
    projections = [project(whole, told, way) for way in draw(whole, told, count=3, seed=3)]
    return told, sizing_problem(whole, told, projections, budget=Decimal(1500))


def planned(whole, **answers):
    told, problem = season_of(whole, **answers)
    plan = solve(problem, gap=0.02, seconds=60, prices=False)
    assert plan.is_order, plan.reason
    return problem, plan, report_of(whole, told, problem, plan)


def without_flow():
    return small_operation(yards=tuple(replace(yard, windows=()) for yard in small_operation().yards))


def all_closed():
    closed = DAY - dt.timedelta(days=1)
    return small_operation(offers=tuple(replace(offer, open_until=closed) for offer in operation().offers))


def all_free():
    whole = small_operation()
    offers = tuple(
        replace(offer, prices=tuple((packs, Decimal(0)) for packs, _price in offer.prices))
        for offer in whole.offers
    )
    return replace(whole, offers=offers, parts=tuple(replace(p, list_price=Decimal(0)) for p in whole.parts))


EDGES = {
    "nothing survives": (small_operation, {"survival_share": 0}),
    "all survive": (small_operation, {"survival_share": 1}),
    "no flow": (without_flow, {}),
    "no colonies": (lambda: small_operation(colonies=()), {}),
    "no colonies, a target": (lambda: small_operation(colonies=()), {"target_colonies": 12}),
    "no stock": (lambda: small_operation(stock=()), {}),
    "every offer closed": (all_closed, {}),
    "no offers": (lambda: small_operation(offers=()), {}),
    "prices of nothing": (all_free, {}),
    "honey for nothing": (small_operation, {"honey_price": 0, "honey_price_more": 0}),
    "no splits come good": (small_operation, {"splits_good_of_ten": 0}),
}


@lru_cache(maxsize=32)
def at_edge(name):
    """Each edge is planned once."""
    make, answers = EDGES[name]
    return planned(make(), **answers)


@pytest.mark.parametrize("edge", EDGES)
def test_an_edge_is_told_on_the_page_in_the_text_and_in_the_workbook(edge, db, client, django_user_model):
    _problem, _plan, report = at_edge(edge)
    run = made.make_run(
        status=Run.Status.DONE, finished_at=timezone.now(), report=as_json(report), message=report.headline
    )
    client.force_login(django_user_model.objects.create_user("keeper", is_superuser=True))
    answer = client.get(reverse("run-order", args=[run.pk]))
    assert answer.status_code == 200
    html = answer.content.decode()
    assert report.headline.split(":")[0].split("$")[0] in html
    assert "nan" not in as_text(report).lower().replace("finan", "")
    assert as_text(report, why=True)
    assert load_workbook(io.BytesIO(workbook_of(report)))["Summary"].max_row > 3


@pytest.mark.parametrize("edge", EDGES)
def test_no_part_is_worth_more_after_the_season_than_it_costs(edge):
    problem, _plan, _report = at_edge(edge)
    worth = {part.code: part.end_value for part in problem.parts}
    for offer in problem.offers:
        inside = sum(worth[part] * pieces for part, pieces in offer.parts.items())
        assert inside <= min(step.price for step in offer.prices) + 1e-6
    for recipe in problem.recipes:
        paid = recipe.cost + recipe.work_minutes / 60 * problem.work.cost_per_hour
        taken = sum(worth[part] * pieces for part, pieces in recipe.takes.items())
        assert sum(worth[part] * pieces for part, pieces in recipe.makes.items()) <= taken + paid + 1e-3


def ordered_parts(plan):
    return {part for line in plan.here_and_now if line.packs for part in line.units}


@pytest.mark.parametrize("edge", ["no flow", "honey for nothing"])
def test_without_a_crop_no_super_is_asked_for(edge):
    problem, _plan, _report = at_edge(edge)
    assert not [use for each in problem.scenarios for use in each.uses if use.code.startswith("super/")]


@pytest.mark.parametrize("edge", ["every offer closed", "no offers"])
def test_without_open_offers_nothing_is_ordered_now(edge):
    _problem, plan, report = at_edge(edge)
    assert plan.here_and_now == ()
    assert report.lines == () and report.spend == 0
    assert report.headline.startswith(
        "Nothing can be ordered now: no offer of what the season asks for is open."
    )


def test_without_stock_all_that_is_ordered_is_told_to_be_owned_nowhere():
    report = at_edge("no stock")[2]
    assert report.lines
    assert all(owned.sound == 0 for line in report.lines for owned in line.why.owned)


def test_prices_of_nothing_end_in_an_order_and_not_in_endless_buying():
    _problem, plan, report = at_edge("prices of nothing")
    assert plan.status in ("optimal", "within_gap")
    assert report.spend <= 1500


@pytest.mark.parametrize("edge", ["no colonies", "no colonies, a target", "nothing survives"])
def test_without_colonies_there_is_nothing_to_buy_for(edge):
    _problem, plan, report = at_edge(edge)
    assert ordered_parts(plan) == set()
    assert report.headline == "Nothing to order: by these answers no colony is there to need anything."


def test_a_problem_file_whose_part_is_worth_more_than_it_costs_is_a_money_machine_in_words():
    _told, problem = season_of(small_operation())
    offer = next(each for each in problem.offers if len(each.parts) == 1 and each.when == "now")
    ((code, pieces),) = offer.parts.items()
    dear = min(step.price for step in offer.prices) / pieces + 1
    parts = tuple(replace(part, end_value=dear) if part.code == code else part for part in problem.parts)
    plan = solve(replace(problem, parts=parts, budget=None), seconds=20)
    assert not plan.is_order and plan.status == "unbounded"
    assert "money machine" in plan.reason and code in plan.reason
