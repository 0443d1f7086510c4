"""What the books hold, as a sheet to bring up to date and send back: yards, flows, suppliers, prices, winters; and what
to look for at each place, as a sheet to count by.

Asks the tables; gives records. Colonies and gear are left out: their acts and counts tell them. Changes nothing.
"""

from decimal import Decimal

from apiary.models import FlowWindow, PastWinter, Yard
from apiary.operation import operation
from inventory.counting.sheet import sheet_before_count
from inventory.loading.ground import FLOW_FIELDS, KEEPER_FIELDS, YARD_FIELDS
from inventory.loading.prices import OFFER_FIELDS
from inventory.models import Offer, Supplier
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


def sheet_by_books(*, day):
    """Offers whose price held no more by the day are left out, as are the few with more price steps than fit."""
    windows = FlowWindow.objects.select_related("yard")
    flows, yards = ("name", *FLOW_FIELDS), ("code", "is_shed", *YARD_FIELDS)
    winters = PastWinter.objects.select_related("yard")
    return Sheet(
        keeper=_keeper(),
        yards=tuple(YardRow(**_fields(yard, yards)) for yard in Yard.objects.all()),
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
    keeper = operation()
    return None if keeper.pk is None else KeeperRow(**_fields(keeper, KEEPER_FIELDS))


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
            **_fields(offer, ("code", *OFFER_FIELDS)),
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
            lines=_lines(
                sheet_before_count(yard, day=day, blind=blind, with_colonies=with_colonies), blind=blind
            ),
        )
        for yard in yards
    )


def _lines(sheet, *, blind):
    return tuple(
        LineToCount(
            tag=place.location.colony.tag if place.location.colony_id else "",
            part=row.part.code,
            condition=str(row.condition),
            booked=None if blind else row.booked,
        )
        for place, row in sheet.rows
    )
