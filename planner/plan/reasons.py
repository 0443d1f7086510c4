"""The reason of each line in a keeper's words: owned, asked for where and when, short without it, believed.

Takes the facts of a plan and one of its bought lines; gives a Why. Says nothing the figures do not bear.
"""

from collections import defaultdict
from dataclasses import dataclass

import numpy as np

from planner.plan.beliefs import beliefs_of
from planner.plan.flows import HALF_A_PIECE
from planner.plan.gear_words import counted, pieces
from planner.plan.otherwise import otherwise
from planner.plan.peaks import peak_of
from planner.plan.records import Why
from planner.plan.use_words import purposes
from planner.plan.words import (
    amount,
    cents,
    day_words,
    listed,
    number,
    of_100,
    part_of_month,
    places,
    seasons,
    sum_words,
)

MOST_PURPOSES = 4


@dataclass(frozen=True, kw_only=True)
class Short:
    """What runs short without a line: of which part, in how many seasons, first when and where."""

    part: str
    in_100: int
    period: int | None  # the week in which the first use goes without, middle of the short seasons
    earliest: int | None  # the earliest such week in any season
    yards: tuple[str, ...]


def reason(line, short, facts, *, fee_saved=None):
    """Why this line is bought. `fee_saved`: shipping that the order would pay without it, if any."""
    peak = peak_of(short.part, facts)
    owned = facts.owned(short.part)
    sentences = [_buy(line, facts), _have(owned, short.part, line, facts)]
    if peak is not None:
        sentences.append(_asked(peak, short.part, line, facts))
    sentences.append(_short(short, line, facts) or _not_short(line, facts, fee_saved))
    return Why(
        sentences=tuple(sentence for sentence in sentences if sentence),
        owned=owned,
        peak=peak,
        short_in_100=short.in_100,
        short_words=part_of_month(facts.day(short.period)) if short.period is not None else "",
        short_yards=short.yards,
        beliefs=beliefs_of(_kinds(short.part, facts), facts.assumptions),
        moves=facts.moves.get((line.offer, line.period), ()),
        otherwise=otherwise(line, facts),
    )


def _kinds(code, facts):
    """Kinds of use that drive the part; of what one colony or pound calls for, the part itself."""
    kinds = facts.needs.kinds(facts.chain(code))
    return tuple(code if kind == "consumable" else kind for kind in kinds)


def short_without(line, facts):
    """Season by season: would a use go without had this line alone not been bought, the rest of the plan as it is?"""
    weights = facts.flows.weights
    firsts = {
        part: _first_weeks(part, gained, facts)
        for part, gained in facts.flows.brought(line.offer, line.period, line.packs).items()
    }
    lacking = {part: np.array([bool(at) for at in weeks]) for part, weeks in firsts.items()}
    share = float(weights @ np.any(list(lacking.values()), axis=0))
    part = max(firsts, key=lambda part: (float(weights @ lacking[part]), _worth(part, line, facts)))
    if not share:
        return Short(part=part, in_100=0, period=None, earliest=None, yards=())
    weeks = sorted(week for found in firsts[part] for week in found)
    return Short(
        part=part,
        in_100=of_100(share),
        period=weeks[len(weeks) // 2],
        earliest=weeks[0],
        yards=_yards(firsts[part], facts),
    )


def _first_weeks(part, gained, facts):
    """For each scenario {week: part gone without} of the first use that lacks a piece; empty where none does."""
    weeks: list[dict[int, str]] = [{} for _ in facts.flows.weights]
    for short_of, gap in facts.flows.missing(part, gained).items():
        lacks = (gap >= HALF_A_PIECE) & facts.needs.begins(short_of)
        for number_ in np.flatnonzero(lacks.any(axis=1)):
            week = int(np.argmax(lacks[number_]))
            if not weeks[number_] or week < min(weeks[number_]):
                weeks[number_] = {week: short_of}
    return weeks


def _worth(part, line, facts):
    facts_of_part = facts.parts.get(part)
    price = float(facts_of_part.list_price) if facts_of_part else 0.0
    return price * facts.offers[line.offer].parts[part]


def _yards(firsts, facts):
    """Names of the yards whose uses go without first, those with most pieces before the others."""
    yards: dict[str, float] = defaultdict(float)
    for number_, found in enumerate(firsts):
        for week, part in found.items():
            for yard, pieces_ in facts.needs.starting(part, number_, week).items():
                yards[yard] += facts.flows.weights[number_] * pieces_
    yards.pop(facts.shed, None)
    most = sorted(yards, key=lambda yard: (-yards[yard], yard))
    return tuple(facts.yard_names.get(yard, yard) for yard in most)


def _buy(line, facts):
    bought = [
        counted(units * line.packs, facts.parts[part])
        for part, units in facts.offers[line.offer].parts.items()
        if part in facts.parts
    ]
    return f"Buy {listed(bought)}."


def _have(owned, code, line, facts):
    """What is in store of the part and of what is made of it; named only where it is not the piece just bought."""
    kinds = [each for each in owned if each.sound]
    if not kinds:
        have = "You have none in store"
    elif _is_all(code, line, facts) and kinds == [each for each in owned if each.part == code]:
        have = f"You have {amount(kinds[0].sound, facts.parts[code].unit)} in store"
    else:
        have = f"You have {listed(counted(each.sound, facts.parts[each.part]) for each in kinds)} in store"
    asides = []
    if spare := sum(each.spare_on_colonies for each in owned):
        have += f" and {number(spare)} spare on colonies"
    if mend := sum(each.to_mend for each in owned):
        asides.append(f"{number(mend)} more {'needs' if mend == 1 else 'need'} mending")
    if held := sum(each.held for each in owned):
        asides.append(f"{number(held)} {'is' if held == 1 else 'are'} held back")
    not_counted = f"; {listed(asides)}, not counted" if asides else ""
    if coming := sum(each.on_order for each in owned):
        due = listed(day_words(day) for day in facts.due(code))
        not_counted += f"; {number(coming)} {'is' if coming == 1 else 'are'} on the way, due {due}"
    return f"{have}{not_counted}."


def _is_all(code, line, facts):
    """Whether the line buys this part and nothing else."""
    return set(facts.offers[line.offer].parts) == {code}


def _asked(peak, code, line, facts):
    spread = f" ({number(peak.low)} to {number(peak.high)} in most years)" if peak.low < peak.high else ""
    left = _left_out(peak, line, facts)
    if peak.week is None:
        return f"The season uses up {amount(peak.mean, facts.parts[code].unit)}{spread}{places(peak.yards)}{left}."
    plain = _is_all(code, line, facts) and len(facts.chain(code)) == 1
    what = number(peak.mean) if plain else f"{number(peak.mean)} {chain_words(code, facts)}"
    goes_into = purposes(facts.needs.kinds(facts.chain(code)))[:MOST_PURPOSES]
    use = f" for {listed(goes_into)}" if goes_into else ""
    back = f"; deadouts should give back {number(peak.returned)} by then" if peak.returned else ""
    return f"The season asks for {what} at once in {peak.words}{spread}{use}{places(peak.yards)}{back}{left}."


def _left_out(peak, line, facts):
    """Of what is asked for, what even with this order is not met, and why not."""
    left = peak.mean - peak.served
    if left < max(1, 0.02 * peak.mean):
        return ""
    budget, price = facts.problem.budget, line.cost / line.packs
    short = budget is not None and budget - facts.plan.spend < price
    because = "the budget does not reach further" if short else "more would cost more than they bring"
    return f"; {number(left)} of them {'is' if left == 1 else 'are'} left out: {because}"


def chain_words(code, facts):
    """What the part and all that is made of it are called together."""
    part = facts.parts[code]
    if len(facts.chain(code)) == 1:
        return pieces(part)
    if part.kind == "frame":
        return f"{part.depth} frames (drawn or with foundation)"
    if part.kind == "foundation":
        return f"sheets of {part.depth} foundation (in frames, drawn or not)"
    finished = [each for each in facts.chain(code) if not facts.parts[each].flat]
    return pieces(facts.parts[finished[0]] if finished else part)


def _short(short, line, facts):
    if not short.in_100:
        return ""
    when = part_of_month(facts.day(short.period))
    where = f" at {listed(short.yards[:2])}" if short.yards else ""
    dearer = _in_season(short.part, line, facts)
    return f"Without this line you run short {seasons(short.in_100)}, first{where} in {when}{dearer}."


def _in_season(code, line, facts):
    """What the same piece costs once the season has shown its need, where it is dearer."""
    later = [
        offer.prices[0].price / offer.parts[code]
        for offer in facts.problem.offers
        if offer.when == "later" and set(offer.parts) == {code}
    ]
    ours = facts.offers[line.offer]
    if not later or set(ours.parts) != {code} or not line.packs:
        return ""
    each = float(line.cost) / line.packs / ours.parts[code]
    if min(later) <= each:
        return ""
    money = facts.money
    now = sum_words(cents(each), money, cents_too=True)
    then = sum_words(cents(min(later)), money, cents_too=True)
    unit = facts.parts[code].unit
    each_of = "each" if unit in ("", "piece") else f"a {unit}"
    return f"; what you then buy in season costs {then} {each_of} instead of {now}"


def _not_short(line, facts, fee_saved):
    if fee_saved:
        saved = sum_words(fee_saved, facts.money, cents_too=True)
        return f"No season runs short without it: it brings the order to free shipping and saves {saved}."
    return "No season runs short without it: it saves dearer buying or work later, or keeps its worth into next year."
