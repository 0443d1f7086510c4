"""Counted against booked: what differs, and what in the books may explain it. Pure: plain records in and out.

Takes Differences of one count and the Facts around its day; gives Explanations, the likeliest first. Each names the
pieces it would explain and the act that would put it right. Proves nothing: the keeper decides.
"""

from inventory.reconcile.along import frames_along
from inventory.reconcile.entries import changed, receipts, twice
from inventory.reconcile.hauls import hauls, opposite
from inventory.reconcile.hives import deadouts, supers
from inventory.reconcile.records import (
    Difference,
    Explanation,
    Facts,
    Hive,
    Likely,
    Making,
    Moved,
    Owed,
    Piece,
    Pieces,
)

__all__ = [
    "Difference",
    "Explanation",
    "Facts",
    "Hive",
    "Likely",
    "Making",
    "Moved",
    "Owed",
    "Piece",
    "Pieces",
    "differing",
    "explain",
    "frames_along",
]

RULES = (opposite, hauls, twice, supers, changed, deadouts, receipts)


def differing(differences):
    """Those where counted is not booked."""
    return tuple(row for row in differences if row.gap)


def explain(differences, facts):
    """Explanations of what differs: those that explain a difference whole before the rest, then by nearness in days."""
    rows = differing(differences)
    by_key = {row.key: row for row in rows}
    found = [explanation for rule in RULES for explanation in rule(rows, facts)]
    kept = [one for one in dict.fromkeys(found) if not _told_better(one, found)]
    return tuple(sorted(kept, key=lambda one: _rank(one, by_key, facts)))


def _told_better(explanation, found):
    """A load that was entered twice is not told once more as one that never came."""
    if explanation.likely not in (Likely.NEVER_CAME, Likely.STILL_HERE):
        return False
    same = (explanation.place, explanation.pieces)
    return any(one.likely == Likely.TWICE and (one.place, one.pieces) == same for one in found)


def _rank(explanation, by_key, facts):
    left = [
        abs(by_key[explanation.place, part, condition].gap) - quantity
        for part, condition, quantity in explanation.pieces
        if (explanation.place, part, condition) in by_key
    ]
    away = abs((explanation.day - facts.day).days) if explanation.day else 0
    order = list(Likely).index(explanation.likely)
    return (any(left), -len(left), away, order, explanation.place, explanation.pieces)
