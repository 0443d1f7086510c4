"""What can be bought when, by day, lead and what is known."""

import datetime as dt
from dataclasses import replace
from decimal import Decimal

import pytest

from planner.requirement.offers import IN_SEASON, flow_weeks
from planner.requirement.prices import Unpriced
from planner.requirement.tokens import RESTED
from planner.season.operation import OfferFacts
from tests.planner.operations import DAY, operation


def listed(**more):
    plain = {
        "code": "extra",
        "supplier": "thimble",
        "name": "medium boxes (invented)",
        "parts": {"box-medium-10": 1},
        "prices": ((1, Decimal(15)),),
    }
    return operation(offers=(*operation().offers, OfferFacts(**{**plain, **more})))


def extra_of(problem):
    return next((offer for offer in problem.offers if offer.code == "extra"), None)


def test_an_open_offer_is_bought_now(season_problem):
    found = extra_of(season_problem(listed(lead_weeks=5, max_packs=7), count=1))
    assert (found.when, found.order_periods, found.lead_periods, found.max_packs) == ("now", (0,), 5, 7)


def test_a_closed_offer_is_left_out(season_problem):
    assert extra_of(season_problem(listed(open_until=DAY - dt.timedelta(days=1)), count=1)) is None
    assert extra_of(season_problem(listed(open_from=DAY + dt.timedelta(days=400)), count=1)) is None


def test_an_offer_that_closes_before_spring_is_decided_now_for_its_week(season_problem):
    days = {"open_from": DAY + dt.timedelta(days=30), "open_until": DAY + dt.timedelta(days=60)}
    found = extra_of(season_problem(listed(**days), count=1))
    assert (found.when, found.order_periods) == ("now", (5,))


def test_an_offer_still_open_in_spring_waits_for_what_spring_shows(season_problem):
    found = extra_of(season_problem(listed(open_from=DAY + dt.timedelta(days=30)), count=1))
    assert (found.when, found.order_periods) == ("later", (16,))
    found = extra_of(season_problem(listed(open_from=DAY + dt.timedelta(days=200)), count=1))
    assert (found.when, found.order_periods) == ("later", (29,))


def test_in_season_everything_is_dearer_and_gear_is_limited(season_problem):
    problem = season_problem(count=2, season_markup=0.5, small_markup=0.1, season_limit=8)
    hurried = {offer.code: offer for offer in problem.offers if offer.supplier == IN_SEASON}
    box = hurried["in-season/box-medium-10"]
    assert box.prices[0].price == pytest.approx(21.5 * 1.5)
    assert (box.max_packs, hurried["in-season/frame-medium-foundation"].max_packs) == (8, 80)
    assert hurried["in-season/sugar"].max_packs is None
    assert hurried["in-season/sugar"].prices[0].price == pytest.approx(34 / 50 * 1.1)
    assert all(offer.when == "later" for offer in hurried.values())


def test_every_must_can_still_be_bought_when_it_is_used(season_problem):
    problem = season_problem(count=4)
    later = {part: offer for offer in problem.offers if offer.when == "later" for part in offer.parts}
    for scenario in problem.scenarios:
        for use in scenario.uses:
            bought = set(use.spends) - {RESTED} if use.must and not use.code.startswith("moth/") else ()
            for part in bought:
                offer = later[part]
                assert offer.max_packs is None
                assert any(week + offer.lead_periods <= use.first for week in offer.order_periods)


def test_honey_gear_in_a_hurry_is_ordered_once_the_flow_shows(season_problem, season_gear):
    problem = season_problem(count=3)
    first = min(flow_weeks(season_gear()))
    box = next(offer for offer in problem.offers if offer.code == "in-season/box-medium-10")
    assert min(box.order_periods) == first + 1
    floor = next(offer for offer in problem.offers if offer.code == "in-season/floor-10")
    assert floor.order_periods == (16,)


def test_a_required_part_without_any_price_is_named(season_problem):
    whole = operation()
    parts = tuple(
        replace(part, list_price=Decimal(0)) if part.code == "jar" else part for part in whole.parts
    )
    offers = tuple(offer for offer in whole.offers if "jar" not in offer.parts)
    with pytest.raises(Unpriced, match="honey jar"):
        season_problem(operation(parts=parts, offers=offers), count=1)


def test_suppliers_keep_their_fees_and_the_hurried_one_has_none(season_problem):
    suppliers = {supplier.code: supplier for supplier in season_problem(count=1).suppliers}
    assert suppliers["oakham"].order_fee == 85
    assert suppliers["oakham"].free_from == 2500
    assert suppliers["larder"].free_from is None
    assert suppliers[IN_SEASON].order_fee == 0
