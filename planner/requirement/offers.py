"""What can be bought when: winter offers now, late ones and hurried ones in season.

Takes the operation's price list; gives the sizing problem's offers and suppliers. Nothing is decided later than now
that is not known later than now: an offer that closes before the first look in spring is bought here and now.
"""

import datetime as dt

from planner.requirement.prices import Unpriced, single_prices
from planner.season.calendar import period_of, piece_of
from planner.sizing.records import Offer, PriceStep, Supplier

IN_SEASON = "in-season"
LEAD_IN_SEASON_WEEKS = 1
ALWAYS_THERE = ("feed", "consumable")
FRAMES_PER_BOX = 10


def offers_in_reach(operation, weeks):
    """Price-list offers open on the day, or opening within the horizon."""
    end = operation.day + dt.timedelta(days=7 * weeks - 1)
    return [
        offer
        for offer in operation.offers
        if (offer.open_until is None or offer.open_until >= operation.day)
        and (offer.open_from is None or offer.open_from <= end)
    ]


def winter_offers(gear, listed):
    """The price list's offers, each with the one period it is ordered in."""
    answers = gear.assumptions
    spring = period_of(answers.start, answers.weeks, answers.spring_week)
    for facts in listed:
        opens = 0
        if facts.open_from is not None and facts.open_from > answers.start:
            opens = min(answers.weeks - 1, -(-(facts.open_from - answers.start).days // 7))
        closes = answers.weeks - 1
        if facts.open_until is not None:
            closes = min(closes, (facts.open_until - answers.start).days // 7)
        waits = opens > 0 and closes >= spring
        yield Offer(
            code=facts.code,
            supplier=facts.supplier,
            parts=dict(facts.parts),
            prices=tuple(PriceStep(from_packs=packs, price=float(price)) for packs, price in facts.prices),
            price_rule=facts.price_rule,
            order_periods=(max(opens, spring) if waits else min(opens, closes),),
            lead_periods=min(facts.lead_weeks, answers.weeks - 1),
            max_packs=facts.max_packs,
            when="later" if waits else "now",
        )


def season_offers(gear, listed, needed, uses):
    """Single pieces in a hurry, dearer: brood gear once losses are known, honey gear once the flow shows."""
    answers = gear.assumptions
    prices = single_prices(gear.operation, listed)
    weeks_of_use, must = _weeks_of_use(uses)
    for code in sorted(needed):
        part = gear.parts.get(code)
        if part is None or part.flat or part.kind == "foundation" or part.comb in ("bare", "drawn"):
            continue
        if code not in prices:
            if code in must:
                raise Unpriced(code, part.name)
            continue
        always = part.kind in ALWAYS_THERE
        markup = answers.small_markup if always else answers.season_markup
        yield Offer(
            code=f"{IN_SEASON}/{code}",
            supplier=IN_SEASON,
            parts={code: 1},
            prices=(PriceStep(from_packs=1, price=round(prices[code] * (1 + markup), 4)),),
            order_periods=_order_weeks(gear, part, weeks_of_use.get(code, ())),
            lead_periods=0 if always else LEAD_IN_SEASON_WEEKS,
            max_packs=None if always else _limit(answers, part),
            when="later",
        )


def _limit(answers, part):
    return answers.season_limit * (FRAMES_PER_BOX if part.kind == "frame" else 1)


def _weeks_of_use(uses):
    """Weeks in which uses of a part begin, a drawn comb told as its framed foundation too; and the parts of musts."""
    weeks: dict = {}
    must: set = set()
    for parts, first, is_must in {((*use.keeps, *use.spends), use.first, use.must) for use in uses}:
        for part in parts:
            weeks.setdefault(part, set()).add(first)
            if part.startswith("comb-"):
                weeks.setdefault(f"frame-{part.split('-')[1]}-foundation", set()).add(first)
        if is_must:
            must.update(parts)
    return weeks, must


def _order_weeks(gear, part, weeks_of_use):
    """Weeks in which a hurried order can know something: used-up things when they are used."""
    answers = gear.assumptions
    spring = period_of(answers.start, answers.weeks, answers.spring_week)
    last = answers.weeks - 2
    if part.kind in ALWAYS_THERE:
        return tuple(sorted(weeks_of_use or {0, spring}))
    weeks = set()
    if gives_brood(gear, part):
        weeks.add(min(spring, last))
    if part.kind == "excluder" or part.depth == answers.super_depth:
        until = max(weeks_of_use, default=answers.weeks)
        seen = {min(week + 1, last) for week in flow_weeks(gear)}
        weeks |= {week for week in seen if week + LEAD_IN_SEASON_WEEKS <= until}
    if part.kind in ("guard", "reducer", "feeder"):
        weeks |= {max(0, min(weeks_of_use, default=spring) - LEAD_IN_SEASON_WEEKS)}
    return tuple(sorted(weeks or {min(spring, last)}))


def gives_brood(gear, part):
    """True for gear of the brood nest, floors and covers."""
    if part.kind in ("floor", "inner cover", "cover", "nuc box", "stand"):
        return True
    return part.depth in gear.brood_depths


def flow_weeks(gear):
    """First week of each flow of a name, over all yards."""
    first: dict = {}
    for yard in gear.operation.yards:
        for window in yard.windows:
            piece = piece_of(gear.assumptions.start, gear.assumptions.weeks, window)
            first[window.name] = min(piece.first, first.get(window.name, piece.first))
    return sorted(set(first.values()))


def suppliers_of(operation, offers):
    """The suppliers of these offers, the hurried one without fee."""
    used = {offer.supplier for offer in offers}
    known = [
        Supplier(
            code=facts.code,
            order_fee=float(facts.order_fee),
            free_from=None if facts.free_from is None else float(facts.free_from),
        )
        for facts in operation.suppliers
        if facts.code in used
    ]
    if IN_SEASON in used:
        known.append(Supplier(code=IN_SEASON))
    return tuple(known)
