"""Gear that is not where the book has it: hauls booked and not made, made and not booked, booked the other way.

Takes what differs and the Facts; gives Explanations.
"""

from collections import defaultdict

from inventory.reconcile.records import Explanation, Likely, fits

CARRIED = ("moved", "placed on a colony", "taken off a colony")


def opposite(rows, facts):
    """The same gear is missing at one place and more at another, by this count or one near that day."""
    pairs = defaultdict(list)
    others = (*rows, *facts.elsewhere)
    for row in rows:
        for other in others:
            same = (row.part, row.condition) == (other.part, other.condition)
            if not same or row.place == other.place or row.gap * other.gap >= 0:
                continue
            if row.gap > 0 and other in rows:
                continue  # told once, at the place where it is missing
            quantity = min(abs(row.gap), abs(other.gap))
            ends = (row.place, other.place) if row.gap < 0 else (other.place, row.place)
            pairs[row.place, *ends].append((row.part, row.condition, quantity))
    return [
        Explanation(likely=Likely.UNBOOKED, place=place, pieces=tuple(pieces), source=source, target=target)
        for (place, source, target), pieces in pairs.items()
    ]


def hauls(rows, facts):
    """Booked loads that the count contradicts: act by act, with all its pieces that fit."""
    by_act = defaultdict(list)
    for moved in facts.moved:
        if moved.reason in CARRIED:
            by_act[moved.act].append(moved)
    return [
        explanation
        for row_place in dict.fromkeys(row.place for row in rows)
        for moves in by_act.values()
        if (explanation := _told(row_place, [row for row in rows if row.place == row_place], moves, facts))
    ]


def _told(place, rows, moves, facts):
    source, target = moves[0].source, moves[0].target
    gaps = {(row.part, row.condition): row.gap for row in rows}
    if moves[0].day > facts.day:
        sign = {source: -1, target: 1}.get(place, 0)
        likely, fitting = Likely.LATER, [move for move in moves if _gap(gaps, move) * sign > 0]
    elif place == target:
        likely = Likely.NEVER_CAME
        fitting = [move for move in moves if _gap(gaps, move) < 0]
    elif place == source:
        likely = Likely.STILL_HERE
        fitting = [move for move in moves if _gap(gaps, move) > 0]
    elif facts.is_store(place) and facts.is_store(target):
        likely = Likely.ELSEWHERE
        fitting = [move for move in moves if _gap(gaps, move) > 0]
    else:
        return None
    turned = [move for move in fitting if abs(_gap(gaps, move)) == 2 * move.quantity]
    if turned and likely in (Likely.NEVER_CAME, Likely.STILL_HERE):
        likely, fitting = Likely.OTHER_WAY, turned
        pieces = [(move.part, move.condition, 2 * move.quantity) for move in fitting]
    else:
        fitting = [move for move in fitting if fits(move.quantity, _gap(gaps, move))]
        pieces = [(move.part, move.condition, move.quantity) for move in fitting]
    if not fitting:
        return None
    return Explanation(
        likely=likely,
        place=place,
        pieces=tuple(pieces),
        source=source,
        target=target,
        act=moves[0].act,
        whole=len(fitting) == len(moves),
        day=moves[0].day,
    )


def _gap(gaps, move):
    return gaps.get((move.part, move.condition), 0)
