"""Inventory's tables: catalogue, suppliers and orders, counts, sales, movements."""

from inventory.models.catalogue import GearSet, GearSetLine, Part, Recipe, RecipeLine
from inventory.models.counts import Count, CountLine, FoundAnswer
from inventory.models.deadouts import Deadout, Hold, InspectorWord, MothCare
from inventory.models.dealings import (
    Claim,
    Invoice,
    InvoiceLine,
    LineClosing,
    Substitution,
    ToldPrice,
    ToldRest,
    ValueBasis,
)
from inventory.models.evenings import Evening
from inventory.models.loans import Feeding, Loan, LoanBack
from inventory.models.movements import Act, BookSeal, Holding, Location, Movement
from inventory.models.sales import Sale, SaleOwed, SaleReturn
from inventory.models.suppliers import Offer, OfferPart, Order, OrderLine, OrderLinePart, PriceStep, Supplier

__all__ = [
    "Act",
    "BookSeal",
    "Claim",
    "Count",
    "CountLine",
    "Deadout",
    "Evening",
    "Feeding",
    "FoundAnswer",
    "GearSet",
    "GearSetLine",
    "Hold",
    "Holding",
    "InspectorWord",
    "Invoice",
    "InvoiceLine",
    "LineClosing",
    "Loan",
    "LoanBack",
    "Location",
    "MothCare",
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
    "Sale",
    "SaleOwed",
    "SaleReturn",
    "Substitution",
    "Supplier",
    "ToldPrice",
    "ToldRest",
    "ValueBasis",
]
