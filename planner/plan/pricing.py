"""What packs of an offer cost, to the cent, and what shipping adds. Takes the problem's prices, gives Decimal money.

The programme counts in floats; a supplier's bill does not. Every sum of the report starts here.
"""

from dataclasses import dataclass
from decimal import Decimal

from planner.plan.records import PacksAt
from planner.plan.words import cents, number, sum_words


@dataclass(frozen=True, kw_only=True)
class Priced:
    price: Decimal  # a pack
    cost: Decimal
    bill: tuple[PacksAt, ...]
    note: str


def priced(offer, packs, money):
    """The bill for so many packs of one order, its price steps applied."""
    steps = sorted(offer.prices, key=lambda step: step.from_packs)
    if offer.price_rule == "incremental":
        return _step_by_step(steps, packs, money)
    step = [step for step in steps if step.from_packs <= max(packs, 1)][-1]
    price = cents(step.price)
    note = f"price from {number(step.from_packs)} packs on" if step.from_packs > 1 else ""
    if not note and len(steps) > 1:
        note = (
            f"{sum_words(steps[1].price, money, cents_too=True)} from {number(steps[1].from_packs)} packs on"
        )
    return Priced(price=price, cost=price * packs, bill=(PacksAt(packs=packs, price=price),), note=note)


def _step_by_step(steps, packs, money):
    ends = [step.from_packs for step in steps[1:]] + [packs + 1]
    counts = [min(packs + 1, end) - step.from_packs for step, end in zip(steps, ends, strict=True)]
    bill = tuple(
        PacksAt(packs=count, price=cents(step.price))
        for step, count in zip(steps, counts, strict=True)
        if count > 0
    )
    cost = sum((each.price * each.packs for each in bill), Decimal(0))
    told = [f"{number(each.packs)} at {sum_words(each.price, money, cents_too=True)}" for each in bill]
    return Priced(
        price=cents(cost / packs) if packs else Decimal(0),
        cost=cost,
        bill=bill,
        note=", ".join(told) if len(told) > 1 else "",
    )


def fee_note(supplier, goods, fee, money):
    """Why shipping costs what it does."""
    if supplier.free_from is None:
        return "" if fee else "no shipping charge"
    limit = cents(supplier.free_from)
    if not fee:
        return f"free from {sum_words(limit, money)}"
    return f"free from {sum_words(limit, money)}, {sum_words(limit - goods, money, cents_too=True)} more"
