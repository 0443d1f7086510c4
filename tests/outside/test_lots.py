"""Dynamic lots through `size`, against their published cost and, where there is one best plan only, its lots."""

import pytest

from tests.outside import lots
from tests.outside.conftest import packs_by_period
from tests.outside.published import case

PLAIN = {
    # Wagner and Whitin, Dynamic Version of the Economic Lot Size Model, Management Science 5(1), 1958, Table 1
    "lot-ww1958": [98, 0, 97, 0, 121, 0, 0, 112, 0, 67, 135, 0],
    # Silver, Pyke and Peterson, Inventory Management and Production Planning and Scheduling, 3rd ed., 1998, ch. 6
    "lot-spp12": [84, 0, 0, 130, 283, 0, 140, 0, 124, 160, 279, 0],
    # Nahmias, Production and Operations Analysis, MRP chapter (casings); two best plans
    "lot-nahmias-casings": None,
    # the same, lot sizing of the trumpet's valve casings; setup, holding and 610.20 from memory
    "lot-nahmias-valve-casing": [154, 0, 0, 0, 0, 171, 0, 0, 114, 0],
    # Hopp and Spearman, Factory Physics, 2nd ed., 2000, sec. 2.3
    "lot-factory-physics": [80, 0, 0, 130, 0, 0, 0, 90, 0, 0],
    # Snyder and Shen, Fundamentals of Supply Chain Theory, 2nd ed., 2019, Example 3.9, Problems 3.27 and 3.29
    "lot-snyder-shen-3.9": [210, 0, 150, 0],
    "lot-snyder-shen-3.27": [150, 180, 0, 200],
    "lot-snyder-shen-3.29": [1310, 0, 1095, 0, 880],
    # Hillier and Lieberman, Introduction to Operations Research, 7th ed., 2001, p. 952; two best plans
    "lot-hillier-jets": None,
    # University of Southampton, examination answer on the Wagner-Whitin algorithm (no year)
    "lot-terminal-a": [70, 0, 0, 50, 0],
    "lot-terminal-b": [70, 0, 0, 30, 60],
    # Rossi, Inventory Analytics, 2021: max_packs an order
    "lot-capacity": [10, 30, 30, 30],
    # Taha, Operations Research: An Introduction, 10th ed., 2017, Example 13.4-4: holding per period
    "lot-taha-13.4-4": [10, 22, 0, 20, 38, 0],
}


@pytest.mark.parametrize("name", PLAIN)
def test_a_dynamic_lot_costs_what_is_published(name, solver, sized):
    published = case(name)
    plan = sized(lots.plain(published.data), solver)
    assert -plan["objective"] == published.figure("optimal_cost")
    if PLAIN[name]:
        assert packs_by_period(plan, "lot", len(PLAIN[name])) == PLAIN[name]


def test_a_price_that_changes_by_period_buys_ahead(solver, sized):
    """Snyder and Shen, Fundamentals of Supply Chain Theory, 2019, course problem: 3,000 at the cheap price, 4,940."""
    published = case("lot-snyder-shen-scmo-price")
    plan = sized(lots.priced(published.data), solver)
    assert -plan["objective"] == published.figure("optimal_cost")
    bought = [sum(packs_by_period(plan, f"lot-{t}", 5)) for t in range(5)]
    assert bought == published.plan("order_quantities")


def test_a_price_that_rises_within_an_order_is_paid_step_by_step(solver, sized):
    """Taha, Operations Research: An Introduction, 2017, Example 13.4-2: 99, lots of 2, 3, 3 beside 1 in hand."""
    published = case("lot-convex-taha-13.4-2")
    plan = sized(lots.rising(published.data), solver)
    assert -plan["objective"] == published.figure("optimal_cost")
    assert packs_by_period(plan, "lot", 3) == published.plan("order_quantities")


def test_regular_and_overtime_are_offers_a_period_with_their_caps(solver, sized):
    """Taha, Operations Research: An Introduction, 2017, Example 13.4-1 (algorithm of Johnson, 1957): 4,685."""
    published = case("prod-metalco")
    plan = sized(lots.regular_and_overtime(published.data), solver)
    assert -plan["objective"] == published.figure("optimal_cost")


def test_planned_backorders_share_a_claim(solver, sized):
    """Rossi, Inventory Analytics, 2021: 230, lots of 0, 60, 0, 40; ten units served a period late."""
    published = case("lot-backorder")
    plan = sized(lots.backordered(published.data), solver)
    everything = lots.EVERYTHING * sum(published.data["requirement"])
    assert everything - plan["objective"] == published.figure("optimal_cost")
    assert packs_by_period(plan, "lot", 4) == published.plan("order_quantities")
    served = {line["use"]: line["units"] for line in plan["scenarios"][0]["served"]}
    assert served["of-0-in-1"] == pytest.approx(10)


def test_two_items_share_the_charge_of_a_shipment(solver, sized):
    """Constructed: the requirements of Silver, Pyke and Peterson (1998) and Wagner and Whitin (1958), 30 a shipment;
    731.20 by enumeration of all 4,096 shipment patterns."""
    published = case("jrp-dynamic")
    plan = sized(lots.shipped_together(published.data), solver)
    assert -plan["objective"] == published.figure("optimal_cost")
    trips = [line["period"] + 1 for line in plan["scenarios"][0]["trips"] if line["trips"]]
    assert sorted(trips) == published.answer["ship_periods"]
