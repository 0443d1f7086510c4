"""Purchase orders and what came of them: the only writer of Order, LineClosing, Claim and Invoice.

What came is told by movements that name its lines; what is owed, the status and the price paid follow from them.
"""

from inventory.orders.claims import answer_claim, broken_in, claim
from inventory.orders.closing import cancel_order, close_lines, reopen_line
from inventory.orders.invoices import billed_lines, enter_invoice
from inventory.orders.owed import (
    LineState,
    OwedRow,
    came,
    closed_lines,
    derived_status,
    owed_everywhere,
    owed_lines,
    replaced,
    settle,
    settled,
)
from inventory.orders.placing import OrderItem, cents, cost_of, place_order

__all__ = [
    "LineState",
    "OrderItem",
    "OwedRow",
    "answer_claim",
    "billed_lines",
    "broken_in",
    "came",
    "cancel_order",
    "cents",
    "claim",
    "close_lines",
    "closed_lines",
    "cost_of",
    "derived_status",
    "enter_invoice",
    "owed_everywhere",
    "owed_lines",
    "place_order",
    "reopen_line",
    "replaced",
    "settle",
    "settled",
]
