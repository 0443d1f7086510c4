"""One scenario's programme by itself, the here-and-now order left open: what two-phase solving and trials solve.

Takes a Problem and a scenario's number; gives a Block whose here-and-now packs are free columns without a price, so
that its optimum is the scenario's own money under any order they are held at.
"""

from dataclasses import dataclass, replace
from typing import Any

from planner.programme import gear as gear_rows
from planner.programme import hauls, money, orders, recipes, uses
from planner.programme.columns import PlainDraft
from planner.programme.draft import add_all
from planner.programme.record import Order, Programme
from planner.sizing.records import BadYears

INFINITE = float("inf")


@dataclass(frozen=True, kw_only=True)
class Block:
    """Columns, rows and money of one scenario; `orders` (offer, period) -> column of the here-and-now packs."""

    programme: Programme
    columns: list
    rows: list
    money: dict
    constant: float
    orders: dict[tuple[str, int], Any]
    worth: dict[str, float]  # part -> money a unit in stock from the first period is worth by itself
    groups: list  # (column, row name of its link or None) of each group of merged uses


def linear_recourse(problem):
    """True where what is done after the scenario is known takes no whole numbers: blocks are LPs then."""
    suppliers = {supplier.code: supplier for supplier in problem.suppliers}
    later = [offer for offer in problem.offers if offer.when == "later"]
    stepped = any(offer.is_whole or len(offer.prices) > 1 for offer in later)
    charged = any(_has_fee(suppliers[offer.supplier]) for offer in later)
    trips = any(haul.trip_cost for haul in problem.hauls)
    return not (stepped or charged or trips or problem.whole_uses)


def _has_fee(supplier):
    fee = supplier.order_fee
    return supplier.free_from != 0 and (any(fee) if isinstance(fee, tuple | list) else fee > 0)


def block(problem, number, merging=None):
    """The block of scenario `number`, of a problem with linear recourse; its uses merged as a Merging says."""
    alone = replace(
        problem,
        scenarios=(replace(problem.scenarios[number], probability=1.0),),
        budget=None,
        bad_years=BadYears(),
    )
    draft = PlainDraft(alone)
    now = [
        _open_order(draft, offer, period)
        for offer in problem.offers
        if offer.when == "now"
        for period in orders.order_periods(problem, offer, all_of_them=True)
    ]
    later = orders.place_orders(draft, _NoLimit(), 0)
    fees = money.fees(draft, later, 0)
    money.later_budget(draft, 0, later, fees)
    draft.programme.orders.extend(later)
    gear = gear_rows.Gear(draft, 0)
    gear.count_given()
    for order in [*now, *later]:
        gear.count_order(order)
    groups = uses.place_uses(draft, gear, 0, merging)
    runs, windows = recipes.place_runs(draft, gear, [*now, *later])
    hauls.place_hauls(draft, gear, runs)
    gear_rows.balance(gear)
    recipes.work_minutes(draft, 0, [*now, *later], runs, windows)
    terms = dict(draft.now_money)
    add_all(terms, draft.own_money[0])
    return Block(
        programme=draft.programme,
        columns=draft.columns,
        rows=draft.rows,
        money=terms,
        constant=draft.constants[0],
        orders={(order.offer.code, order.period): next(iter(order.packs)) for order in now},
        worth={part.code: draft.worth[part.code][0] for part in problem.parts},
        groups=groups,
    )


def _open_order(draft, offer, period):
    """Packs of a here-and-now order, paid for elsewhere."""
    column = draft.column("packs", "now", offer.code, period)
    order = Order(
        offer=offer, period=period, scenario=None, packs={column: 1.0}, cost={column: 0.0}, most=INFINITE
    )
    orders.count_money(draft, order)
    return order


class _NoLimit:
    """Stands for Most where no yes-or-no choice needs a limit."""

    def packs(self, offer, period):
        return INFINITE
