"""Mistakes of entry: an act booked twice, work at the bench, by bees or on a condition not booked, goods not received.

Takes what differs and the Facts; gives Explanations.
"""

from collections import defaultdict
from itertools import combinations

from inventory.reconcile.records import Explanation, Likely, fits

TWICE_DAYS = 3  # the same again within so many days looks like one entry made twice
SPENT = ("feed", "consumable")


def twice(rows, facts):
    """The same movement in two acts within a few days: the later one explains as much missing, or more at its source."""
    gaps = {row.key: row.gap for row in rows}
    by_act = defaultdict(list)
    whole: dict[int, int] = defaultdict(int)
    for moved in facts.moved:
        whole[moved.act] += 1
    alike = defaultdict(list)
    for moved in facts.moved:
        same = (
            moved.part,
            moved.condition,
            moved.quantity,
            moved.source,
            moved.target,
            moved.reason,
        )
        alike[same].append(moved)
    for group in alike.values():
        for first, second in combinations(sorted(group, key=lambda move: (move.day, move.act)), 2):
            near = (
                second.day <= facts.day
                and first.act != second.act
                and (second.day - first.day).days <= TWICE_DAYS
            )
            for place, sign in ((second.target, -1), (second.source, 1)):
                gap = gaps.get((place, second.part, second.condition), 0)
                if near and gap * sign > 0 and fits(second.quantity, gap):
                    by_act[place, second.act, second.day].append(second)
    return [
        Explanation(
            likely=Likely.TWICE,
            place=place,
            pieces=tuple(dict.fromkeys((move.part, move.condition, move.quantity) for move in moves)),
            source=moves[0].source,
            target=moves[0].target,
            act=act,
            whole=len(dict.fromkeys(moves)) == whole[act],
            day=day,
        )
        for (place, act, day), moves in by_act.items()
    ]


def changed(rows, facts):
    """What lies there as another thing than the book has it: assembled or not, drawn, to mend or mended."""
    return [*_made(rows, facts), *_drawn(rows, facts), *_marked(rows)]


def _made(rows, facts):
    found = []
    for place in dict.fromkeys(row.place for row in rows if facts.is_store(row.place)):
        gaps = {row.part: row.gap for row in rows if row.place == place and row.condition == "sound"}
        for making in facts.makings:
            times = _times(making, gaps, facts)
            if times:
                found.append(_making(place, making, times, gaps, facts))
    return found


def _times(making, gaps, facts):
    """How often the recipe was carried out (below zero: undone) if it alone made these gaps; 0 where it did not."""
    taken = [
        (part, n)
        for part, n in making.takes
        if part in facts.pieces and facts.pieces[part].kind not in SPENT and gaps.get(part)
    ]
    if not taken:
        return 0
    times = {-gaps[part] / n for part, n in taken} | {gaps.get(part, 0) / n for part, n in making.makes}
    one = times.pop()
    return int(one) if not times and one == int(one) else 0


def _making(place, making, times, gaps, facts):
    names = [part for part, _ in (*making.takes, *making.makes) if gaps.get(part)]
    pieces = tuple((part, "sound", abs(gaps[part])) for part in names)
    if times > 0:
        return Explanation(
            likely=Likely.ASSEMBLED, place=place, pieces=pieces, recipe=making.recipe, times=times
        )
    booked = [
        move
        for move in facts.moved
        if move.reason == "assembled"
        and move.target == place
        and (move.part, move.quantity) in [(part, -times * n) for part, n in making.makes]
    ]
    last = max(booked, key=lambda move: (move.day, move.act), default=None)
    return Explanation(
        likely=Likely.NOT_ASSEMBLED,
        place=place,
        pieces=pieces,
        recipe=making.recipe,
        times=-times,
        act=last.act if last else None,
        whole=last is not None,
        day=last.day if last else None,
    )


def _drawn(rows, facts):
    """Foundation is missing and drawn comb of the same depth is more."""
    found = []
    for row in rows:
        piece = facts.pieces.get(row.part)
        if piece is None or piece.comb != "foundation" or row.gap >= 0:
            continue
        for other in rows:
            comb = facts.pieces.get(other.part)
            if other.place != row.place or other.gap <= 0 or comb is None or comb.comb != "drawn":
                continue
            if comb.depth == piece.depth and other.condition == row.condition:
                quantity = min(-row.gap, other.gap)
                pieces = (
                    (row.part, row.condition, quantity),
                    (other.part, other.condition, quantity),
                )
                found.append(Explanation(likely=Likely.DRAWN, place=row.place, pieces=pieces))
    return found


def _marked(rows):
    """Missing in one condition, more in another."""
    found = []
    for row in rows:
        for other in rows:
            same = (row.place, row.part) == (other.place, other.part)
            if same and row.gap < 0 < other.gap:
                quantity = min(-row.gap, other.gap)
                pieces = (
                    (row.part, row.condition, quantity),
                    (other.part, other.condition, quantity),
                )
                found.append(Explanation(likely=Likely.MARKED, place=row.place, pieces=pieces))
    return found


def receipts(rows, facts):
    """More in a store while as many are still to come on an order."""
    owed: dict[tuple, int] = defaultdict(int)
    pieces = defaultdict(list)
    for line in facts.owed:
        owed[line.order, line.part] += line.quantity
    for row in rows:
        if row.gap <= 0 or row.condition == "held back" or not facts.is_store(row.place):
            continue
        for (order, part), quantity in owed.items():
            if part == row.part and fits(min(row.gap, quantity), row.gap):
                pieces[row.place, order].append((part, row.condition, min(row.gap, quantity)))
    return [
        Explanation(likely=Likely.RECEIPT, place=place, pieces=tuple(told), order=order)
        for (place, order), told in pieces.items()
    ]
