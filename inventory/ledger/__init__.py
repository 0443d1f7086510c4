"""The acts of the books; the only writer of Act, Movement, Holding and BookSeal.

Each act takes keyword arguments, `day`, `who` and `key` among them, and gives the Act it wrote, all in one
transaction. A resend with the same key gives the first act unchanged. A yard stands for its store.
Refusals are in inventory/errors.py. Questions are in inventory/stock.py.
"""

from inventory.ledger.arrivals import Arrival, Instead
from inventory.ledger.bench import assemble, draw, draw_comb
from inventory.ledger.care import burn, mark, mend, scrap, use
from inventory.ledger.counts import correct
from inventory.ledger.feeding import feed
from inventory.ledger.field import move, place, take_off
from inventory.ledger.goods import open_stock, open_stocks, receive
from inventory.ledger.lines import Line
from inventory.ledger.loads import haul
from inventory.ledger.loans import Return, lend, take_back
from inventory.ledger.reversal import reverse
from inventory.ledger.salvage import Piece, salvage
from inventory.orders import OrderItem, cancel_order, place_order

__all__ = [
    "Arrival",
    "Instead",
    "Line",
    "OrderItem",
    "Piece",
    "Return",
    "assemble",
    "burn",
    "cancel_order",
    "correct",
    "draw",
    "draw_comb",
    "feed",
    "haul",
    "lend",
    "mark",
    "mend",
    "move",
    "open_stock",
    "open_stocks",
    "place",
    "place_order",
    "receive",
    "reverse",
    "salvage",
    "scrap",
    "take_back",
    "take_off",
    "use",
]
