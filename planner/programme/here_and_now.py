"""The here-and-now part of the programme by itself: packs, price steps, fees and the budget, without any scenario.

Takes a Problem; gives an OrderPart whose money is what the order costs. What it earns is said by cuts.
"""

from dataclasses import dataclass

from planner.programme import money, orders
from planner.programme.columns import PlainDraft
from planner.programme.draft import add_all
from planner.programme.most import Most
from planner.programme.record import Programme


@dataclass(frozen=True, kw_only=True)
class OrderPart:
    """Columns, rows and money (costs negative) of the here-and-now order; `packs` (offer, period) -> terms."""

    programme: Programme
    columns: list
    rows: list
    money: dict
    packs: dict
    most: dict  # (offer, period) -> packs no best plan goes beyond


def order_part(problem):
    draft = PlainDraft(problem)
    placed = orders.place_orders(draft, Most(problem), None)
    fees = money.fees(draft, placed, None)
    money.budget(draft, placed, fees)
    draft.programme.orders.extend(placed)
    draft.programme.fees.extend(fees)
    costs: dict = {}
    for order in placed:
        add_all(costs, order.cost, -1.0)
    for fee in fees:
        add_all(costs, fee.terms, -1.0)
    return OrderPart(
        programme=draft.programme,
        columns=draft.columns,
        rows=draft.rows,
        money=costs,
        packs={(order.offer.code, order.period): order.packs for order in placed},
        most={(order.offer.code, order.period): order.most for order in placed},
    )
