"""The order's lines by supplier: packs, prices, shipping, days, each with its reason.

Takes the facts of a plan; gives one SupplierOrder a supplier and week of ordering. Every sum is to the cent, and
what the plan says it spends is what the lines and fees add up to: anything else is a bug and stops here.
"""

import math
from collections import defaultdict
from decimal import Decimal

from planner.plan.pricing import fee_note, priced
from planner.plan.reasons import reason, short_without
from planner.plan.records import Line, PartUnits, SupplierOrder
from planner.plan.words import cents, day_words, part_of_month


def supplier_orders(facts):
    """One order a supplier and week, dearest first, its lines numbered through."""
    bought = defaultdict(list)
    for line in facts.plan.here_and_now:
        if line.packs:
            bought[facts.offers[line.offer].supplier, line.period].append(line)
    sums = {key: sum(float(line.cost) for line in lines) for key, lines in bought.items()}
    orders, first = [], 1
    for key in sorted(bought, key=lambda key: (key[1], -sums[key], key[0])):
        orders.append(_order(*key, bought[key], first, facts))
        first += len(bought[key])
    spend = sum((order.total for order in orders), Decimal(0))
    assert abs(spend - cents(facts.plan.spend)) <= Decimal("0.01") * max(1, first), (spend, facts.plan.spend)
    return tuple(orders)


def _order(supplier, period, bought, first, facts):
    bought = sorted(bought, key=lambda line: (-float(line.cost), line.offer))
    bills = [priced(facts.offers[line.offer], whole(line.packs), facts.money) for line in bought]
    goods = sum((bill.cost for bill in bills), Decimal(0))
    fee = _fee(supplier, period, facts)
    lines = []
    for number, (line, bill) in enumerate(zip(bought, bills, strict=True), first):
        saved = _fee_saved(facts.suppliers[supplier], period, goods, bill.cost, fee)
        lines.append(_line(number, line, bill, facts, fee_saved=saved))
    order_by = min(line.order_by for line in lines)
    weeks = max(facts.offers[line.offer].lead_periods for line in bought)
    return SupplierOrder(
        supplier=supplier,
        name=facts.supplier_names.get(supplier, supplier),
        period=period,
        lines=tuple(lines),
        goods=goods,
        fee=fee,
        fee_note=fee_note(facts.suppliers[supplier], goods, fee, facts.money),
        total=goods + fee,
        order_by=order_by,
        due_on=order_by + (facts.day(weeks) - facts.start),
    )


def whole(packs):
    """Packs of an order are whole: a part of a pack cannot be bought."""
    assert abs(packs - round(packs)) < 1e-6, packs
    return round(packs)


def _fee(supplier, period, facts):
    fees = [fee.fee for fee in facts.plan.fees if (fee.supplier, fee.period) == (supplier, period)]
    return cents(sum(fees))


def _fee_saved(supplier, period, goods, cost, fee):
    """Shipping the order would pay without this line, where this line is what makes it free."""
    if fee or supplier.free_from is None or goods == cost or goods - cost >= cents(supplier.free_from):
        return None
    charged = supplier.order_fee
    return cents(charged if isinstance(charged, int | float) else charged[period]) or None


def _line(number, line, bill, facts, *, fee_saved):
    offer = facts.offers[line.offer]
    listed = facts.listed_offers.get(line.offer)
    short = short_without(line, facts)
    order_by, because = _order_by(line, short, facts)
    return Line(
        number=number,
        offer=line.offer,
        name=listed.name if listed else line.offer,
        packs=whole(line.packs),
        parts=tuple(
            PartUnits(
                part=part,
                name=facts.parts[part].name,
                unit=facts.parts[part].unit,
                units=round(units * line.packs),
            )
            for part, units in offer.parts.items()
            if part in facts.parts
        ),
        price=bill.price,
        cost=bill.cost,
        bill=bill.bill,
        price_note=bill.note,
        order_by=order_by,
        order_by_why=because,
        due_on=order_by + (facts.day(offer.lead_periods) - facts.start),
        why=reason(line, short, facts, fee_saved=fee_saved),
    )


def _order_by(line, short, facts):
    """The last day on which the price still holds and the goods still come, and are built, before their first use."""
    offer, listed = facts.offers[line.offer], facts.listed_offers.get(line.offer)
    days = []
    if short.earliest is not None:
        earliest = short.earliest
        build = weeks_to_build(offer, earliest, facts)
        last = facts.day(max(line.period, earliest - offer.lead_periods - build))
        bench = f", with {build} week{'' if build == 1 else 's'} at the bench" if build else ""
        days.append((last, f"first needed in {part_of_month(facts.day(earliest))}{bench}"))
    if listed and listed.open_until:
        days.append((listed.open_until, f"price holds until {day_words(listed.open_until)}"))
    if not days:
        return facts.day(line.period), "no day presses; ordered with the rest"
    day, because = min(days)
    return max(day, facts.day(line.period)), because


def weeks_to_build(offer, until, facts):
    """Weeks of free evenings that all assembling up to that week takes in the busiest season, for gear that comes
    in pieces; none where the offer brings nothing to assemble or evenings are not counted."""
    minutes = facts.problem.work.minutes_per_period
    built = any(
        recipe.work_minutes and offer.parts.keys() & recipe.takes.keys() for recipe in facts.problem.recipes
    )
    if not built or not minutes or not sum(minutes):
        return 0
    busiest = max(sum(scenario.work[: until + 1]) for scenario in facts.plan.scenarios)
    return math.ceil(busiest / (sum(minutes) / len(minutes)))
