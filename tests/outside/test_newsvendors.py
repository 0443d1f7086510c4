"""One buy before the season is known, through `size`, against published quantities and expected profit or cost."""

import pytest

from tests.outside import newsvendors
from tests.outside.conftest import packs
from tests.outside.published import case

COUNTED = (
    # Nahmias, Production and Operations Analysis, ch. 5, Examples 5.1-5.3 (histogram from memory)
    "nv-macs",
    # Hillier and Lieberman, Introduction to Operations Research, stochastic single-period problems; answer computed
    "nv-freddie",
    # Snyder and Shen, Fundamentals of Supply Chain Theory, 2nd ed., 2019, Problems 4.7(b) and 4.8(a)
    "nv-snyder-4.7b",
    "nv-snyder-4.8a",
)

CONTINUOUS = (
    # Snyder and Shen, Fundamentals of Supply Chain Theory, 2nd ed., 2019, Example 4.3 and Problem 4.8(b)
    "nv-snyder-4.3",
    "nv-snyder-4.8b",
    # Porteus, Foundations of Stochastic Inventory Theory, 2002, ch. 1
    "nv-porteus",
    # Cachon and Terwiesch, Matching Supply with Demand, 3rd ed., 2013, ch. 12; profit from memory
    "nv-hammer",
)


def mean_of(outcomes):
    return sum(probability * units for probability, units in outcomes)


@pytest.mark.parametrize("name", COUNTED)
def test_a_buy_of_whole_pieces_is_the_published_one(name, solver, sized):
    published = case(name)
    data = published.data
    plan = sized(newsvendors.single(data), solver)
    assert packs(plan, "buy-item") == published.figure("Q")
    underage = data.get("underage", 0)
    if underage:
        cost = underage * mean_of(newsvendors.outcomes(data)) - plan["objective"]
        assert cost == published.figure("expected_cost")
    else:
        assert plan["objective"] == published.figure("expected_profit")


@pytest.mark.parametrize("name", CONTINUOUS)
def test_a_buy_under_a_continuous_law_lies_in_its_slice_and_earns_the_published(name, solver, sized):
    """The law goes in as 400 midpoints: the quantity may lie anywhere in the published quantile's slice, and judged
    by the law itself (uncut) earns what is published; the objective differs by the lift of the cut and 0.03 % for
    the slices."""
    published = case(name)
    law, (price, cost, salvage) = newsvendors.law(published.data), newsvendors.prices(published.data)
    plan = sized(newsvendors.single(published.data), solver)
    quantity, best = packs(plan, "buy-item"), published.answer["Q"]
    ratio = published.answer["critical_ratio"]
    slice_width = law.ppf(ratio + 1 / newsvendors.SLICES) - law.ppf(ratio - 1 / newsvendors.SLICES)
    assert abs(quantity - best) <= slice_width
    underage = published.data.get("underage")
    if underage:
        spent = underage * law.mean() - newsvendors.profit(law, price, cost, salvage, quantity)
        assert spent == published.figure("expected_cost", slack=1e-3 * published.answer["expected_cost"])
    else:
        earned = newsvendors.profit(law, price, cost, salvage, quantity)
        assert earned == pytest.approx(published.answer["expected_profit"], rel=1e-5)
    expected = newsvendors.profit(law, price, cost, salvage, best)
    lift = (price - salvage) * newsvendors.cut(law) if published.data["dist"] == "normal" else 0
    assert plan["objective"] - lift == pytest.approx(expected, rel=3e-4)


def test_four_items_under_one_budget_share_its_shadow_price(solver, sized):
    """Constructed from published items (Cachon and Terwiesch 2013; Porteus 2002; Snyder and Shen 2019) by the rule of
    Hadley and Whitin, Analysis of Inventory Systems, 1963: F(Q) = (p - (1 + shadow price) c)/(p - s)."""
    published = case("nv-budget")
    items = published.data["items"]
    plan = sized(newsvendors.shared_budget(published.data), solver)
    assert plan["spend"] == pytest.approx(published.data["budget"])
    laws = [newsvendors.law(item) for item in items]
    bought = [packs(plan, f"buy-item-{k}") for k in range(len(items))]
    assert bought == pytest.approx(published.answer["Q"], abs=0.15)
    earned = sum(
        newsvendors.profit(law, *newsvendors.prices(item), quantity)
        for law, item, quantity in zip(laws, items, bought, strict=True)
    )
    assert earned == pytest.approx(published.answer["expected_profit"], rel=1e-5)
    lift = sum(
        (item["price"] - item["salvage"]) * newsvendors.cut(law)
        for law, item in zip(laws, items, strict=True)
    )
    assert plan["objective"] - lift == pytest.approx(published.answer["expected_profit"], rel=1e-3)
    assert plan["shadow_prices"]["budget"] == pytest.approx(published.answer["lambda"], rel=0.02)
