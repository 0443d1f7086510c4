"""What is sensible for each piece of a dead hive, by why it died and what was seen. Pure.

Takes the kind of a piece and what is known of the hive; gives what may become of it, what is suggested and why, and
the reason if it is held back. Suggestions are common practice, no source, unless one is named; rules are not:
brood nobody looked at, pesticide in the comb and suspected foulbrood leave no choice.
"""

from dataclasses import dataclass

from inventory.gear import Comb, Kind

SOUND, TO_MEND, HELD, SCRAPPED, BURNT = "sound", "to_mend", "held", "scrapped", "burnt"
FATES = (SOUND, TO_MEND, HELD, SCRAPPED, BURNT)
KEPT_APART = (HELD, BURNT)
CAUSES = ("starved", "queen", "mites", "cold", "mice", "robbed", "pesticide", "disease", "unknown")
HIVE_GEAR = frozenset(Kind) - {Kind.FEED, Kind.CONSUMABLE, Kind.FOUNDATION}


@dataclass(frozen=True, kw_only=True)
class Seen:
    """What is known of a dead hive."""

    cause: str
    brood_seen: bool
    suspected: bool = False


@dataclass(frozen=True, kw_only=True)
class Suggestion:
    fate: str
    why: str


def is_comb(comb):
    return comb == Comb.DRAWN


def reason_to_hold(comb, seen):
    """The gravest reason that leaves no choice about a piece; empty where there is none."""
    if seen.suspected:
        return "foulbrood"
    if is_comb(comb) and not seen.brood_seen:
        return "brood"
    if is_comb(comb) and seen.cause == "pesticide":
        return "pesticide"
    return ""


def open_fates(comb, seen):
    """What may become of a piece: all of it, or held back and burnt only."""
    return KEPT_APART if reason_to_hold(comb, seen) else FATES


LOCKED = {
    "foulbrood": "foulbrood suspected: nothing goes back into stock",
    "brood": "held back, no comb leaves until the brood was looked at",
    "pesticide": "pesticide stays in comb and stored pollen: held back",
}
STORE_IT = Suggestion(fate=SOUND, why="")
BY_CAUSE = {  # (cause, what) -> suggestion; what is comb, a kind, or "" for all the rest
    ("cold", Kind.INNER_COVER): Suggestion(
        fate=TO_MEND, why="damp came from above: dry it, look for the leak"
    ),
    ("cold", Kind.COVER): Suggestion(fate=TO_MEND, why="damp came from above: dry it, look for the leak"),
    ("mice", Comb.DRAWN): Suggestion(
        fate=TO_MEND, why="cut out what was gnawed or soiled; scrap what is past it"
    ),
    ("mice", Kind.FLOOR): Suggestion(fate=TO_MEND, why="scrape and air it: nest and droppings"),
    ("disease", Comb.DRAWN): Suggestion(fate=HELD, why="until it is known which disease"),
    ("disease", Kind.FRAME): Suggestion(fate=HELD, why="until it is known which disease"),
    ("disease", ""): Suggestion(fate=TO_MEND, why="scrape and scorch before it is used again"),
    ("pesticide", Kind.FRAME): Suggestion(fate=TO_MEND, why="air it: it was among the poisoned combs"),
    ("robbed", Comb.DRAWN): Suggestion(fate=SOUND, why="scrap combs robbers tore to the midrib"),
}


def suggestion(kind, comb, seen):
    """What a piece is best made of, and why where that is not plain."""
    reason = reason_to_hold(comb, seen)
    if reason:
        return Suggestion(fate=HELD, why=LOCKED[reason])
    if is_comb(comb):
        return BY_CAUSE.get((seen.cause, Comb.DRAWN), STORE_IT)
    return BY_CAUSE.get((seen.cause, kind)) or BY_CAUSE.get((seen.cause, "")) or STORE_IT
