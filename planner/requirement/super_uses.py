"""Supers in gear: who gets the how-manieth from when to when, and what leaving it on is worth.

Takes a projection's super needs; gives uses. Alike ones (same yard, flow, number and weeks, honey within a few lb) are
one. Pulling early or not is two uses in a row instead of two rival ones: the second, leaving it on until the flow is
over, needs the first and earns the second round it saves. That says the same with no token to share.
"""

from dataclasses import replace

from planner.requirement import values
from planner.requirement.words import slug
from planner.sizing.records import Use

HONEY_BIN_LB = 6.0
STRENGTHS = ("strong", "fair", "weak", "split")


def super_uses(gear, projection, price, hives):
    """All supers worth their handling, each first to last; the largest lot of a yard and flow may be pulled early."""
    rows = [(row, _worth(gear, row, price)) for row in merged(projection.supers)]
    rows = [(row, worth) for row, worth in rows if worth > 0]
    early = _lots_pulled_early(gear, rows)
    homes = homes_by_yard(hives)
    for row, worth in rows:
        need, strengths, _colonies, _honey = row
        use = _use(gear, row, worth, homes)
        last_early = early.get((need.yard, need.window, strengths, need.number, need.width))
        if last_early is None:
            yield use
            continue
        saved = values.early_pull_cost(gear.assumptions, gear.yards[need.yard], use.units)
        yield replace(use, last=last_early, value=use.value - saved)
        yield replace(
            use,
            code=use.code.replace("super/", "left-on/", 1),
            first=last_early + 1,
            value=saved,
            needs_use=use.code,
            per=1.0,
        )


def _worth(gear, row, price):
    need, _strengths, _colonies, honey = row
    return values.super_value(gear.assumptions, gear.yards[need.yard], honey, price)


def _use(gear, row, value, homes):
    need, strengths, colonies, _honey = row
    home = home_of(need, homes)
    width = "" if need.width == gear.home.width else f"/{need.width}-frame"
    return Use(
        code=f"super/{need.yard}/{slug(need.window)}/{'+'.join(strengths)}/{need.number}{width}",
        location=need.yard,
        first=need.first,
        last=need.last,
        units=colonies,
        value=value,
        keeps=gear.super_bundle(need.width),
        needs_use=home.code if home else None,
        per=colonies / home.units if home else 1.0,
    )


def _lots_pulled_early(gear, rows):
    """The largest lot by yard and flow, where a super still goes on elsewhere in the weeks that are gained."""
    starts = {row[0].first for row, _worth in rows}
    lots: dict = {}
    for (need, strengths, colonies, _honey), worth in rows:
        early = need.early_last
        if early is None or need.strength == "split":
            continue
        if worth <= values.early_pull_cost(gear.assumptions, gear.yards[need.yard], colonies):
            continue
        if any(early < start <= need.last for start in starts):
            key = (need.yard, need.window, strengths, need.number, need.width)
            lots.setdefault((need.yard, need.window), []).append((colonies, key, early))
    return {key: early for found in lots.values() for _colonies, key, early in [max(found)]}


def homes_by_yard(hives, kind="hive"):
    """yard -> the use that hives most splits there, where they come from several mothers' yards."""
    most: dict = {}
    for use in hives:
        if use.code.startswith(f"{kind}/"):
            known = most.get(use.location)
            if known is None or use.units > known.units:
                most[use.location] = use
    return most


def home_of(need, homes):
    """The hives a split's box stands on, or None."""
    return homes.get(need.yard) if need.strength == "split" else None


def merged(needs):
    """Super needs alike but for strength, joined: (need, strengths, colonies, honey lb on average)."""
    groups: dict = {}
    for need in needs:
        if need.strength == "split":
            key = (need.yard, need.window, need.number, need.width, need.first, need.last, "split", 0)
        else:
            honey_bin = int(need.honey_lb // HONEY_BIN_LB)
            key = (need.yard, need.window, need.number, need.width, need.first, need.last, "", honey_bin)
        groups.setdefault(key, []).append(need)
    for alike in groups.values():
        if len(alike) == 1:
            need = alike[0]
            yield need, (need.strength,), need.colonies, need.honey_lb * need.colonies / need.colonies
            continue
        colonies = sum(need.colonies for need in alike)
        honey = sum(need.honey_lb * need.colonies for need in alike) / colonies
        strengths = tuple(sorted({need.strength for need in alike}, key=STRENGTHS.index))
        early = [need.early_last for need in alike]
        together = None if None in early else max(early)
        yield replace(alike[0], early_last=together), strengths, colonies, honey
