"""One pack more and one pack fewer of a line, said in a keeper's words: what it costs, what it should earn, what to do.

Takes the moves a study of the order found and the names of packs; gives Move records. Every word follows from the
figures told beside it: "leave it" is said where a pack earns less than it costs, and nowhere else.
"""

from collections import defaultdict
from decimal import Decimal

from planner.plan.budget_records import Move
from planner.plan.pricing import priced
from planner.plan.words import amount, cents, listed, number, sum_words, units_word

FINE = Decimal(10)  # sums below it are told with their cents
CENT = Decimal("0.01")


def moves_by_line(nearby, facts):
    """{(offer, period): (one more, one fewer)}; empty where nothing was asked."""
    found = defaultdict(list)
    for moved in nearby.moves if nearby is not None else ():
        pack, aside = pack_of(moved.offer, facts), aside_of(moved, facts)
        found[moved.offer, moved.period].append(move_of(moved, pack, facts.money, aside=aside))
    return {key: tuple(sorted(moves, key=lambda move: -move.step)) for key, moves in found.items()}


def pack_of(code, facts):
    """What one pack is called: "pack of 5", "pack of 50 lb", "bottle"; "" where it is a single piece."""
    listed = facts.listed_offers.get(code)
    parts = listed.parts if listed else facts.offers[code].parts
    if len(parts) != 1:
        return "pack"
    ((part, units),) = parts.items()
    known = facts.parts.get(part)
    unit = known.unit if known else ""
    if round(units) == 1:
        return "" if unit in ("", "piece") else unit
    return f"pack of {amount(units, unit)}"


def packs_word(pack, count):
    """Of several: packs, bottles; "" where a pack is a single piece."""
    if not pack or not pack.startswith("pack"):
        return pack and units_word(pack, many=count != 1)
    return "pack" if count == 1 else "packs"


def aside_of(moved, facts):
    """What the bill changes by beside the pack itself: shipping that falls due or away, a price step passed."""
    if moved.limit:
        return ""
    offer, packs = facts.offers[moved.offer], round(moved.packs)
    now, then = (priced(offer, count, facts.money) for count in (packs, packs + moved.step))
    shipping = cents(moved.cost_change) - (then.cost - now.cost)
    words = []
    if abs(shipping) > CENT:
        due = "falls due" if shipping > 0 else "falls away"
        words.append(f"{told(facts.money, shipping)(abs(shipping))} of shipping {due}")
    if offer.price_rule == "all_units" and packs + moved.step > 0 and then.price != now.price:
        words.append(f"the price a pack {'rises' if then.price > now.price else 'falls'}")
    return f" ({listed(words)})" if words else ""


def move_of(moved, pack, money, *, aside=""):
    """One Moved of the study as a Move."""
    cost = cents(moved.cost_change)
    earned = cents(moved.worth_change + moved.cost_change)
    over = cents(moved.over_budget)
    can_be = moved.served and not moved.limit
    head = f"One{' ' + pack if pack else ''} {'more' if moved.step > 0 else 'fewer'}"
    if not can_be:
        said = _cannot(moved)
        cost = earned = over = Decimal(0)
    else:
        said = _told(moved.step, cost, earned, over, money, aside)
    return Move(
        step=moved.step,
        cost=cost,
        earned=earned,
        over_budget=over,
        can_be=can_be,
        head=head,
        said=said,
    )


def _cannot(moved):
    if moved.limit == "most":
        return f"cannot be had: {number(moved.packs)} is the most that may be ordered"
    if moved.limit == "least":
        return "cannot be: there is no pack to take off"
    return "will not do: what must be done would be left undone"


def _told(step, cost, earned, over, money, aside):
    """The bill, the budget, what it earns, and what follows of them."""
    say = told(money, cost, earned)
    breaks = f" and breaks the budget by {told(money, over)(over)}; it" if over else " and"
    advice = _advice(step, earned - cost)
    if over and earned > cost:
        advice = ""  # it would pay, were there the money: the figures say so
    return f"{_bill(step, cost, say)}{aside}{breaks} {_earns(step, earned, say)}{advice}"


def _bill(step, cost, say):
    """A price step or free shipping may turn the bill the other way."""
    if not cost:
        return "changes nothing on the bill"
    if step > 0:
        return f"costs {say(cost)}" if cost > 0 else f"brings the bill down by {say(-cost)}"
    return f"saves {say(-cost)}" if cost < 0 else f"makes the bill {say(cost)} dearer"


def _earns(step, earned, say):
    if not earned:
        return "should earn nothing" if step > 0 else "loses nothing"
    return f"should earn {say(earned)}" if earned > 0 else f"loses {say(-earned)}"


def _advice(step, gain):
    if not gain:
        return ": take it or leave it" if step > 0 else ": keep it or not"
    if gain < 0:
        return ", so leave it" if step > 0 else ", so keep it"
    return ", so it would pay" if step > 0 else ", so it could go"


def told(money, *sums):
    """How these sums are told beside each other: whole, or with cents where whole they would hide which is more."""
    sizes = sorted({abs(each) for each in sums})
    whole = [round(each) for each in sizes]
    fine = any(0 < each < FINE for each in sizes) or len(set(whole)) < len(sizes)
    fine = fine and any(each % 1 for each in sizes)
    return lambda value: sum_words(value, money, cents_too=fine)
