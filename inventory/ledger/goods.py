"""Gear that comes into the books: opening stock, and what a supplier delivers on an order.

Takes lines (opening) or arrivals by part (an order in full, in part, over, with broken pieces); gives the Act.
"""

from inventory import orders
from inventory.errors import (
    BeforeOrdered,
    MoreThanOwed,
    NotOnOrder,
    OrderClosed,
    Refused,
    refuse,
)
from inventory.gear import Condition, Reason
from inventory.ledger.arrivals import Arrival, checked_arrivals, checked_swaps, keep_swaps
from inventory.ledger.lines import checked, parts_by_code
from inventory.ledger.posting import Entry, post
from inventory.ledger.rules import inside, refuse_unfit, refuse_unstarted, store
from inventory.locations import outside
from inventory.models import Location, Order


def open_stock(*, location, lines, day, who, key, note=""):
    """What was there before the books began, at one store or on one colony."""
    return open_stocks(stocks=[(location, lines)], day=day, who=who, key=key, note=note)


def open_stocks(*, stocks, day, who, key, note=""):
    """Opening stock of many places in one act: `stocks` gives (store or colony, lines) pairs."""

    def entries():
        catalogue = parts_by_code()
        ground = outside(Location.Kind.CORRECTION)
        for place, lines in stocks:
            location = inside(place)
            refuse_unstarted(location, day)
            told = checked(lines, act="opening stock", catalogue=catalogue)
            refuse_unfit(told, location)
            for line in told:
                yield Entry(
                    part=line.part,
                    quantity=line.quantity,
                    condition=line.condition,
                    source=ground,
                    target=location,
                    reason=Reason.OPENING,
                )

    return post("opening stock", entries, day=day, who=who, key=key, note=note)


def receive(*, order, into, day, who, key, arrivals=None, substitutes=(), over_allowed=False, note=""):
    """Takes in an order: all that is owed, or the arrivals told; more than is owed only when allowed.

    `substitutes` are Instead of what was ordered: what they settle is no longer owed.
    """

    def entries():
        current = Order.objects.get(pk=order.pk)
        target = store(into)
        _refuse_closed(current, day)
        owed = orders.owed_lines(current)
        left = {row.key: row.owed for row in owed}
        swapped = checked_swaps(current, owed, left, substitutes)
        told = _all_owed(owed, left) if arrivals is None else arrivals
        came = checked_arrivals(told, enough=bool(swapped))
        shares = _shared(current, owed, left, came, over_allowed)
        keep_swaps(swapped, key)
        shares += [(swap.part, swap.row.line, swap.counts) for swap in swapped]
        return [entry for part, line, counts in shares for entry in _landed(part, line, counts, target)]

    return post("receive", entries, day=day, who=who, key=key, note=note)


def _refuse_closed(order, day):
    if order.status == Order.Status.CANCELLED:
        raise OrderClosed(reference=order.reference, status=order.get_status_display())
    if day < order.placed_on:
        raise BeforeOrdered(reference=order.reference, placed_on=order.placed_on, day=day)


def _all_owed(owed, left):
    return [Arrival(part=row.part, sound=left[row.key]) for row in owed if left[row.key]]


def _shared(order, owed, left, told, over_allowed):
    """Gives each order line its share, in the order of the lines; what is over goes to the part's last line."""
    problems: list[Refused] = []
    shares = []
    for part, counts in told:
        rows = [row for row in owed if row.part == part]
        if not rows:
            problems.append(NotOnOrder(part=part, reference=order.reference))
            continue
        room = sum(left[row.key] for row in rows)
        if sum(counts) > room and not over_allowed:
            problems.append(MoreThanOwed(part=part, reference=order.reference, came=sum(counts), owed=room))
            continue
        for row in rows:
            quota = sum(counts) if row is rows[-1] else min(left[row.key], sum(counts))
            left[row.key] = max(0, left[row.key] - quota)
            given, counts = _cut(counts, quota)
            shares.append((part, row.line, given))
    refuse(problems)
    return shares


def _cut(counts, quota):
    """Splits (sound, to mend, scrapped) into the first `quota` pieces and the rest."""
    given = []
    for count in counts:
        given.append(min(count, quota))
        quota -= given[-1]
    return given, [count - taken for count, taken in zip(counts, given, strict=True)]


def _landed(part, line, counts, target):
    supplier = outside(Location.Kind.SUPPLIER)
    scrap = outside(Location.Kind.SCRAP)
    sound, to_mend, scrapped = counts
    ends = (
        (sound, Condition.SOUND, target, Reason.RECEIVED),
        (to_mend, Condition.TO_MEND, target, Reason.RECEIVED),
        (scrapped, Condition.TO_MEND, scrap, Reason.BROKEN),
    )
    return [
        Entry(
            part=part,
            quantity=quantity,
            condition=condition,
            source=supplier,
            target=end,
            reason=reason,
            order_line=line,
        )
        for quantity, condition, end, reason in ends
        if quantity
    ]
