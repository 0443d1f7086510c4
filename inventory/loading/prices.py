"""The suppliers and price lists of a sheet into the tables.

Takes records and the gathering of changes; writes inside the caller's transaction. Money becomes whole cents.
An offer the sheet does not name stays, or is closed where its supplier's list is said to be complete: its row is kept,
orders may speak of it.
"""

import datetime as dt

from inventory.loading.changes import CHANGED, NEW, SAME, differing, labels_of, saved
from inventory.models import Offer, OfferPart, Part, PriceStep, Supplier
from inventory.orders import cents

OFFER_FIELDS = ("name", "price_rule", "open_from", "open_until", "lead_weeks", "max_packs")


def post_suppliers(rows, changes):
    """Every supplier by code afterwards, those of the books too."""
    suppliers = Supplier.objects.in_bulk(field_name="code")
    for row in rows:
        values = {
            "name": row.name,
            "order_fee_cents": cents(row.order_fee),
            "free_from_cents": None if row.free_from is None else cents(row.free_from),
            "lead_weeks": row.lead_weeks,
        }
        supplier = suppliers.setdefault(row.code, Supplier(code=row.code))
        saved(supplier, values, kind="suppliers", changes=changes, name=row.name, at=row.row)
    return suppliers


def post_offers(rows, suppliers, changes, *, complete=frozenset(), day):
    """`complete`: codes of the suppliers whose list leaves nothing out."""
    parts = Part.objects.in_bulk(field_name="code")
    there = Offer.objects.prefetch_related("parts__part", "steps").in_bulk(field_name="code")
    for row in rows:
        offer = there.get(row.code)
        _post_offer(row, offer, suppliers[row.supplier], parts, changes)
    told = {row.code for row in rows}
    closing = {suppliers[code].pk for code in complete}
    spoken_of = closing | {suppliers[row.supplier].pk for row in rows}
    for offer in there.values():
        if offer.code in told or offer.supplier_id not in spoken_of or _is_closed(offer, day):
            continue
        if offer.supplier_id in closing:
            _close(offer, day, changes)
        else:
            words = "not in the sheet, stays: say on Suppliers that the list is complete to close it"
            changes.say("prices", offer, SAME, words)


def _is_closed(offer, day):
    return offer.open_until is not None and offer.open_until < day


def _close(offer, day, changes):
    """The last day its price holds is the one before."""
    offer.open_until = day - dt.timedelta(days=1)
    if offer.open_from is not None:
        offer.open_from = min(offer.open_from, offer.open_until)
    offer.save(update_fields=["open_from", "open_until"])
    changes.say("prices", offer, CHANGED, f"no more on the list: holds until {offer.open_until}")


def _post_offer(row, offer, supplier, parts, changes):
    is_new = offer is None
    offer = offer or Offer(code=row.code, supplier=supplier)
    values = {field: getattr(row, field) for field in OFFER_FIELDS}
    words = [] if is_new else _differences(row, offer, values)
    for field, value in values.items():
        setattr(offer, field, value)
    if is_new or words:
        offer.save()
        offer.parts.all().delete()
        offer.steps.all().delete()
        OfferPart.objects.bulk_create(
            OfferPart(offer=offer, part=parts[code], units=units) for code, units in row.parts.items()
        )
        PriceStep.objects.bulk_create(
            PriceStep(offer=offer, from_packs=packs, price_cents=cents(price)) for packs, price in row.prices
        )
    becomes = NEW if is_new else CHANGED if words else SAME
    changes.say(
        "prices",
        f"{supplier}: {row.name}",
        becomes,
        ", ".join(words) or _opening_words(row) * is_new,
        at=row.row,
    )


def _differences(row, offer, values):
    words = labels_of(offer, differing(offer, values))
    if {line.part.code: line.units for line in offer.parts.all()} != dict(row.parts):
        words.append("what a pack holds")
    was = [(step.from_packs, step.price_cents) for step in offer.steps.all()]
    becomes = [(packs, cents(price)) for packs, price in row.prices]
    if was != becomes:
        words.append(f"price {_told(was)} becomes {_told(becomes)}")
    return words


def _opening_words(row):
    return _told([(packs, cents(price)) for packs, price in row.prices])


def _told(steps):
    return " / ".join(
        f"{price // 100}.{price % 100:02d}" + (f" from {packs}" if packs > 1 else "")
        for packs, price in steps
    )
