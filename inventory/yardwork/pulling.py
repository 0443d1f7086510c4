"""Supers coming off living colonies to be extracted, from one colony or a whole yard in one act.

Takes {colony: supers} and the store they go to; gives the Act. What a super holds is read off the book: all above
the boxes of the hive's set, drawn comb first. Frames with foundation come back as the drawn comb they became.
"""

from dataclasses import dataclass

from inventory.errors import NoBoxFits, NotEnough, refuse
from inventory.gear import Comb, CombUse, Kind, Reason
from inventory.ledger.bench import drawn_comb
from inventory.ledger.lines import Line
from inventory.ledger.posting import Entry
from inventory.ledger.rules import refuse_unfit, store
from inventory.locations import outside
from inventory.models import Location, Part
from inventory.yardwork.boxsets import super_of, supers
from inventory.yardwork.hives import hives_told, refuse_each, sound_gear_on
from inventory.yardwork.whole import together

ORDER = (Comb.DRAWN, Comb.FOUNDATION, Comb.BARE)


@dataclass(frozen=True, kw_only=True)
class Piece:
    """So many of a part come off; `found` of them are beyond what the book has above the brood."""

    part: Part
    quantity: int
    found: int = 0


def pull(*, colonies, target, day, who, key, box=None, drawn=True, found_allowed=True, note=""):
    """Supers come off. `box` is the code of a super; none: of each hive the kind the book has on it."""

    def work(_key):
        there, bench = store(target), outside(Location.Kind.BENCH)
        hives = hives_told(colonies, day=day, act="pull", what="supers")
        gear = sound_gear_on([hive.colony for hive in hives], as_of=day)
        known = [super_of(box)] if box is not None else supers()
        told = {hive: kind_on(gear[hive.colony.pk], hive.colony.hive_set, known) for hive in hives}
        refuse(
            NoBoxFits(colony=hive.colony, hive_set=hive.colony.hive_set)
            for hive, one in told.items()
            if one is None and box is None
        )
        told = {hive: one or known[0] for hive, one in told.items()}
        refuse_each(hives, lambda hive: refuse_unfit([Line(told[hive].box, 1)], hive.place))
        pieces = {
            hive: coming_off(gear[hive.colony.pk], hive.colony.hive_set, told[hive], hive.number)
            for hive in hives
        }
        if not found_allowed:
            refuse(_short(piece, hive.place, day) for hive in hives for piece in pieces[hive] if piece.found)
        for hive in hives:
            for piece in pieces[hive]:
                yield from _off(piece, hive.place, there, bench, drawn=drawn)

    return together("pull", work, day=day, who=who, key=key, note=note, found_allowed=found_allowed)


def kind_on(gear, hive_set, known):
    """The super that stands on a hive by the book, else the first of its width; None where none fits."""
    fit = [one for one in known if one.fits(hive_set)]
    return next((one for one in fit if supers_on(gear, hive_set, one)), fit[0] if fit else None)


def supers_on(gear, hive_set, box_set):
    """How many boxes of that kind the book has above those of the hive's set."""
    return max(0, gear.get(box_set.box, 0) - getattr(hive_set, f"{box_set.depth}_boxes"))


def coming_off(gear, hive_set, box_set, number):
    """The Pieces of so many supers: their share of the frames above the brood, and beyond the book full ones."""
    booked = supers_on(gear, hive_set, box_set)
    by_book, beyond = min(number, booked), max(0, number - booked)
    taken, found = {box_set.box: number}, {box_set.box: beyond}
    rest = _above_brood(gear, hive_set, box_set)
    share = -(-sum(rest.values()) * by_book // booked) if booked else 0
    left = min(share, by_book * box_set.width)
    for part, quantity in rest.items():
        taken[part] = min(quantity, left)
        left -= taken[part]
    if beyond:
        comb = drawn_comb(box_set.depth, CombUse.HONEY)
        found[comb] = beyond * box_set.frames
        taken[comb] = taken.get(comb, 0) + found[comb]
    return [Piece(part=part, quantity=n, found=found.get(part, 0)) for part, n in taken.items() if n]


def _short(piece, place, day):
    told = {"wanted": piece.quantity, "booked": piece.quantity - piece.found, "code": piece.part.code}
    return NotEnough(part=piece.part, location=place, day=day, **told)


def _above_brood(gear, hive_set, box_set):
    """{frame: pieces} of the depth that are not the brood boxes' own, honey comb first."""
    frames = [part for part in gear if part.kind == Kind.FRAME and part.depth == box_set.depth]
    frames.sort(key=lambda part: (ORDER.index(Comb(part.comb)), part.comb_use == CombUse.BROOD, part.code))
    rest = {part: gear[part] for part in frames}
    brood = getattr(hive_set, f"{box_set.depth}_boxes") * box_set.width
    for part in sorted(frames, key=lambda part: (part.comb_use != CombUse.BROOD, -frames.index(part))):
        own = min(rest[part], brood)
        rest[part] -= own
        brood -= own
    return rest


def _off(piece, here, there, bench, *, drawn):
    """Entries that carry a piece to the store; drawn out by now, foundation leaves the hive as comb."""
    part = piece.part
    if piece.found:
        ground = outside(Location.Kind.CORRECTION)
        found = {"quantity": piece.found, "reason": Reason.FOUND, "found": True}
        yield Entry(part=part, source=ground, target=here, **found)
    if drawn and part.comb == Comb.FOUNDATION:
        comb = drawn_comb(part.depth, CombUse.HONEY)
        yield Entry(part=part, quantity=piece.quantity, source=here, target=bench, reason=Reason.DRAWN)
        yield Entry(part=comb, quantity=piece.quantity, source=bench, target=here, reason=Reason.DRAWN)
        part = comb
    yield Entry(part=part, quantity=piece.quantity, source=here, target=there, reason=Reason.TAKEN_OFF)
