"""What the books hold, as a sheet to bring up to date and send back: yards, flows, suppliers, prices, winters; and what
to look for at each place, as a sheet to count by.

Asks the tables; gives records. Colonies and gear are left out: their acts and counts tell them. Changes nothing.
"""

from decimal import Decimal

from apiary.models import FlowWindow, Keeper, PastWinter, Yard
from inventory import counting
from inventory.locations import store_of
from inventory.models import Count, Offer, Supplier
from inventory.sheets import (
    FlowRow,
    KeeperRow,
    LineToCount,
    OfferRow,
    Sheet,
    SupplierRow,
    ToCount,
    WinterRow,
    YardRow,
)
from inventory.sheets.layout import PRICE_STEPS

YARD_FIELDS = (
    *("code", "name", "is_shed", "region", "stands", "drive_minutes", "miles", "gate", "emergency", "access"),
    "visit_every_days",
)
OFFER_FIELDS = ("code", "name", "price_rule", "open_from", "open_until", "lead_weeks", "max_packs")


def sheet_by_books(*, day):
    """Offers whose price held no more by the day are left out, as are the few with more price steps than fit."""
    windows = FlowWindow.objects.select_related("yard")
    flows = ("name", "first_week", "last_week", "gain_lb", "spread")
    winters = PastWinter.objects.select_related("yard")
    return Sheet(
        keeper=_keeper(),
        yards=tuple(YardRow(**_fields(yard, YARD_FIELDS)) for yard in Yard.objects.all()),
        flows=tuple(FlowRow(yard=window.yard.code, **_fields(window, flows)) for window in windows),
        suppliers=tuple(_supplier(supplier) for supplier in Supplier.objects.all()),
        offers=_offers(day),
        winters=tuple(
            WinterRow(
                autumn=row.autumn,
                yard=row.yard.code if row.yard else "",
                went_in=row.went_in,
                came_out=row.came_out,
            )
            for row in winters
        ),
    )


def amount(cents):
    return Decimal(cents) / 100


def _fields(row, names):
    return {name: getattr(row, name) for name in names}


def _keeper():
    keeper = Keeper.objects.order_by("pk").first()
    if keeper is None:
        return None
    return KeeperRow(**_fields(keeper, ("name", "address", "region", "money", "truck_lb")))


def _supplier(supplier):
    free_from = supplier.free_from_cents
    return SupplierRow(
        code=supplier.code,
        name=supplier.name,
        order_fee=amount(supplier.order_fee_cents),
        free_from=None if free_from is None else amount(free_from),
        lead_weeks=supplier.lead_weeks,
    )


def _offers(day):
    rows = Offer.objects.select_related("supplier").prefetch_related("parts__part", "steps")
    return tuple(
        OfferRow(
            supplier=offer.supplier.code,
            parts={line.part.code: line.units for line in offer.parts.all()},
            prices=tuple((step.from_packs, amount(step.price_cents)) for step in offer.steps.all()),
            **_fields(offer, OFFER_FIELDS),
        )
        for offer in rows
        if (offer.open_until is None or offer.open_until >= day)
        and 1 <= len(offer.steps.all()) <= PRICE_STEPS
        and offer.parts.all()
    )


def places_to_count(yards, *, day, blind=False, with_colonies=False):
    """A ToCount for each yard: what the book has there, or, blind, what may be there without any number."""
    return tuple(
        ToCount(
            yard=yard.code,
            day=day,
            lines=_lines(Count(location=store_of(yard), day=day, blind=blind, with_colonies=with_colonies)),
        )
        for yard in yards
    )


def _lines(count):
    return tuple(
        LineToCount(
            tag=place.location.colony.tag if place.location.colony_id else "",
            part=row.part.code,
            condition=str(row.condition),
            booked=None if count.blind else row.booked,
        )
        for place, row in counting.sheet_of(count).rows
    )
