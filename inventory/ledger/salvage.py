"""Gear of a colony that ended: each piece goes to a store, to mend, is held back, scrapped, burnt or lost.

Takes pieces by part with what becomes of them; gives the Act. Salvage may be done in several goes.
"""

from dataclasses import dataclass, fields

from inventory.errors import NothingGiven, NotWhole, UnknownCondition, UnknownPart, refuse
from inventory.gear import Condition, Reason
from inventory.ledger.lines import condition_of, part_of, parts_by_code, whole
from inventory.ledger.posting import Entry, post, turned
from inventory.ledger.rules import colony_place, refuse_living, store
from inventory.locations import outside
from inventory.models import Location, Part

STORED = {
    "sound": (Condition.SOUND, Reason.SALVAGED),
    "to_mend": (Condition.TO_MEND, Reason.SALVAGED),
    "held": (Condition.HELD, Reason.HELD),
}
GONE = {
    "scrapped": (Location.Kind.SCRAP, Reason.SCRAPPED),
    "burnt": (Location.Kind.BURNT, Reason.BURNT),
    "lost": (Location.Kind.LOST, Reason.LOST),
}


@dataclass(frozen=True, kw_only=True)
class Piece:
    """What becomes of one part of the hive; `condition` is how the book has it on the colony."""

    part: Part | str
    condition: Condition = Condition.SOUND
    sound: int = 0
    to_mend: int = 0
    held: int = 0
    scrapped: int = 0
    burnt: int = 0
    lost: int = 0


def salvage(*, colony, into, pieces, day, who, key, found_allowed=False, note=""):
    """Takes the hive of an ended colony apart. Held-back gear never comes back as sound."""

    def entries():
        here, there = colony_place(colony), store(into)
        refuse_living(here, day)
        told = told_pieces(pieces)
        if not any(sum(counts.values()) for _, _, counts in told):
            raise NothingGiven(act="salvage")
        return [entry for part, was, counts in told for entry in sorted_out(part, was, counts, here, there)]

    return post("salvage", entries, day=day, who=who, key=key, note=note, found_allowed=found_allowed)


def told_pieces(pieces):
    """[(part's row, condition by the book, {what becomes of them: pieces})]; raises everything that is wrong."""
    catalogue, problems, told = parts_by_code(), [], []
    names = [field.name for field in fields(Piece) if field.name in STORED or field.name in GONE]
    for piece in pieces:
        try:
            part = part_of(piece.part, catalogue)
            counts = {name: whole(part, getattr(piece, name), lowest=0) for name in names}
            told.append((part, condition_of(part, piece.condition), counts))
        except (UnknownPart, NotWhole, UnknownCondition) as problem:
            problems.append(problem)
    refuse(problems)
    return told


def sorted_out(part, was, counts, here, there):
    """Entries that send the pieces of one part where they belong."""
    entries = []
    for name, (becomes, reason) in STORED.items():
        after = Condition.HELD if was == Condition.HELD else becomes
        if counts[name]:
            entries += turned(
                part=part,
                quantity=counts[name],
                source=here,
                target=there,
                was=was,
                becomes=after,
                reason=Reason.HELD if after == Condition.HELD else reason,
            )
    for name, (kind, reason) in GONE.items():
        if counts[name]:
            entries.append(
                Entry(
                    part=part,
                    quantity=counts[name],
                    condition=was,
                    source=here,
                    target=outside(kind),
                    reason=reason,
                )
            )
    return entries
