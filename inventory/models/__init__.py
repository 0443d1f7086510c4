"""Inventory's tables: catalogue, suppliers and orders, counts, movements."""

from inventory.models.catalogue import GearSet, GearSetLine, Part, Recipe, RecipeLine
from inventory.models.counts import Count, CountLine, FoundAnswer
from inventory.models.movements import Act, BookSeal, Holding, Location, Movement
from inventory.models.suppliers import Offer, OfferPart, Order, OrderLine, OrderLinePart, PriceStep, Supplier

__all__ = [
    "Act",
    "BookSeal",
    "Count",
    "CountLine",
    "FoundAnswer",
    "GearSet",
    "GearSetLine",
    "Holding",
    "Location",
    "Movement",
    "Offer",
    "OfferPart",
    "Order",
    "OrderLine",
    "OrderLinePart",
    "Part",
    "PriceStep",
    "Recipe",
    "RecipeLine",
    "Supplier",
]
