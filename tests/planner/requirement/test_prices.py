"""End values stay below every way to get a part: no buying for its own sake."""

from decimal import Decimal

from planner.requirement.prices import (
    CAP,
    Unpriced,
    cheapest_prices,
    end_values,
    residual_share,
    single_prices,
)
from planner.requirement.tokens import TOKENS
from planner.season.operation import OfferFacts
from tests.planner.operations import operation


def test_the_cheapest_price_is_at_the_best_step_and_the_single_price_at_one_pack():
    whole = operation()
    assert cheapest_prices(whole, whole.offers)["box-medium-10-flat"] == 64 / 5
    assert single_prices(whole, whole.offers)["box-medium-10-flat"] == 72.5 / 5
    assert cheapest_prices(whole, ())["box-medium-10-flat"] == 16.0


def test_a_part_keeps_less_the_shorter_it_lives_and_never_all():
    shares = [residual_share(years) for years in (1, 2, 5, 20, 1000)]
    assert shares == sorted(shares)
    assert shares[0] == shares[1] == 0.45
    assert shares[-1] == CAP < 1


def test_no_offer_and_no_recipe_pays_by_itself(season_problem):
    problem = season_problem()
    worth = {part.code: part.end_value for part in problem.parts}
    for offer in problem.offers:
        inside = sum(worth[part] * pieces for part, pieces in offer.parts.items())
        assert inside < min(step.price for step in offer.prices), offer.code
    for recipe in problem.recipes:
        inside = sum(worth[part] * pieces for part, pieces in recipe.takes.items())
        cost = recipe.cost + recipe.work_minutes / 60 * problem.work.cost_per_hour
        made = sum(worth[part] * pieces for part, pieces in recipe.makes.items())
        assert made < inside + cost or recipe.makes.keys() <= set(TOKENS), recipe.code


def test_a_cheap_kit_pulls_its_parts_down():
    whole = operation()
    kit = OfferFacts(
        code="kit",
        supplier="oakham",
        name="kit",
        parts={"floor-10": 1, "cover-10": 1},
        prices=((1, Decimal(10)),),
    )
    worth = end_values(whole, (*whole.offers, kit), (), 15)
    assert worth["floor-10"] + worth["cover-10"] <= 0.9 * 10 + 1e-9


def test_an_unpriced_part_is_named_with_what_to_do():
    fault = Unpriced("jar", "honey jar, 1 lb")
    assert fault.part == "jar"
    assert "No supplier offers “honey jar, 1 lb” (jar)" in str(fault)
    assert "add an offer" in str(fault)
