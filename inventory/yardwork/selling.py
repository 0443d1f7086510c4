"""A nuc or a colony sold with its gear, and what the buyer brings back of it for the deposit or in a swap.

Takes colonies, the buyer, what goes with them, what is to come back and by when; gives the Act and writes the Sale
beside it. Coming back is an act of its own. Money in whole cents.
"""

from dataclasses import dataclass
from datetime import date

from apiary import colonies as bees
from apiary.models import Colony
from inventory.errors import NothingGiven, Refused, refuse
from inventory.gear import Reason
from inventory.ledger.lines import checked
from inventory.ledger.posting import Entry
from inventory.ledger.rules import colony_place, refuse_not_living, store
from inventory.locations import outside
from inventory.models import Location, Sale, SaleOwed, SaleReturn
from inventory.sales import deposit_left, is_settled
from inventory.yardwork.refusals import (
    BackTooEarly,
    NoBuyer,
    NoColony,
    NoDayBack,
    NotMoney,
    RefundTooMuch,
    SaleSettled,
    SaleUndone,
)
from inventory.yardwork.sharing import booked_at, carried, rest, suspected, taken, worked_later
from inventory.yardwork.whole import together


@dataclass(frozen=True, kw_only=True)
class Terms:
    """What was agreed: `owed` are Lines the buyer brings back by `back_by`; a price of None was not told."""

    buyer: str
    price_cents: int | None = None
    deposit_cents: int = 0
    owed: tuple = ()
    back_by: date | None = None


def sell(*, colonies, terms, goes, stays_at, day, who, key, found_allowed=True, note=""):
    """`goes`: Lines that leave with the bees, of all colonies together; None: all the book has on them.

    What stays goes into the store `stays_at`. A hive with gear held back on it is not sold.
    """

    def work(act_key):
        if not colonies:
            raise NoColony(act="sell")
        places = [colony_place(colony) for colony in colonies]
        owed = checked(terms.owed, act="bring back") if terms.owed else []
        refuse([*_faults_of(terms, places, day), *_unsold(places, day)])
        booked = booked_at(places, day)
        shares = _leaving(goes, booked, places)
        for place in places:
            bees.end(
                place.colony,
                why=Colony.Ended.SOLD,
                day=day,
                who=who,
                note=f"to {terms.buyer.strip()}",
                act_key=act_key,
            )
        _write(act_key, places, terms, owed, day)
        sold = carried(shares, outside(Location.Kind.SOLD), Reason.SOLD)
        return [*sold, *carried(rest(booked), store(stays_at), Reason.TAKEN_OFF)]

    return together("sell", work, day=day, who=who, key=key, note=note, found_allowed=found_allowed)


def got_back(*, sale, into, lines, day, who, key, refund_cents=0, settles=False, note=""):
    """The buyer brought pieces back into a store; with `settles` nothing more is waited for, even where none came."""

    def work(act_key):
        row = Sale.objects.get(pk=sale.pk)
        refuse(_faults_of_return(row, day, refund_cents))
        if not lines and not settles:
            raise NothingGiven(act="come back")
        told = checked(lines, act="come back") if lines else []
        home, away = store(into), outside(Location.Kind.SOLD)
        SaleReturn.objects.create(
            act_key=act_key, sale=row, day=day, refund_cents=refund_cents, settles=settles
        )
        return [_back(line, away, home) for line in told]

    return together("bring back", work, day=day, who=who, key=key, note=note)


def _faults_of(terms, places, day):
    tags = ", ".join(str(place.colony) for place in places)
    if not 1 <= len(terms.buyer.strip()) <= 80:
        yield NoBuyer(colonies=tags)
    for what, cents in (("price", terms.price_cents or 0), ("deposit", terms.deposit_cents)):
        if not isinstance(cents, int) or isinstance(cents, bool) or cents < 0:
            yield NotMoney(what=what, cents=cents)
    if terms.owed and terms.back_by is None:
        yield NoDayBack(buyer=terms.buyer.strip())
    if terms.back_by is not None and terms.back_by < day:
        yield BackTooEarly(day=terms.back_by, buyer=terms.buyer.strip(), sold_on=day)


def _unsold(places, day):
    for place in places:
        try:
            refuse_not_living(place, day)
        except Refused as refusal:
            yield from refusal.problems
    yield from suspected(places, "sold")
    yield from worked_later(places, day, "sold")


def _leaving(goes, booked, places):
    """[(place, Line)] of what leaves; `booked` is left with what stays."""
    if goes is not None:
        return taken(checked(goes, act="sell") if goes else [], booked, beyond=places[0])
    shares = rest(booked)
    for pieces in booked.values():
        pieces.clear()
    return shares


def _write(act_key, places, terms, owed, day):
    sale = Sale.objects.create(
        act_key=act_key,
        day=day,
        buyer=terms.buyer.strip(),
        price_cents=terms.price_cents,
        deposit_cents=terms.deposit_cents,
        back_by=terms.back_by,
    )
    sale.colonies.set([place.colony for place in places])
    totals: dict = {}
    for line in owed:
        totals[line.part] = totals.get(line.part, 0) + line.quantity
    SaleOwed.objects.bulk_create(
        SaleOwed(sale=sale, part=part, quantity=number) for part, number in totals.items()
    )


def _faults_of_return(sale, day, refund_cents):
    if not Sale.objects.standing().filter(pk=sale.pk).exists():
        yield SaleUndone(buyer=sale.buyer)
        return
    if is_settled(sale):
        yield SaleSettled(buyer=sale.buyer)
    if day < sale.day:
        yield BackTooEarly(day=day, buyer=sale.buyer, sold_on=sale.day)
    if not isinstance(refund_cents, int) or isinstance(refund_cents, bool) or refund_cents < 0:
        yield NotMoney(what="deposit given back", cents=refund_cents)
    elif refund_cents > deposit_left(sale):
        yield RefundTooMuch(
            refund=f"{refund_cents / 100:,.2f}", left=f"{deposit_left(sale) / 100:,.2f}", buyer=sale.buyer
        )


def _back(line, away, home):
    """A piece on its way back, in the condition it comes in."""
    return Entry(
        part=line.part,
        quantity=line.quantity,
        condition=line.condition,
        source=away,
        target=home,
        reason=Reason.RETURNED,
    )
