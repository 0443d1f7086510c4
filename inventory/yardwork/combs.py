"""Frames that leave a hive with bees on them: which of those the book has on it they are.

Takes a colony's place, a depth and how many; gives the entries that carry them on. Brood comb goes first, then honey
comb; frames the book still has with foundation are drawn by now, if bees went along on them, and are booked so.
What the book lacks even then is found in the same act. Writes nothing.
"""

from inventory.gear import Comb, CombUse, Condition, Kind, Reason
from inventory.ledger.posting import Entry
from inventory.locations import outside
from inventory.models import Location
from inventory.yardwork.outfit import frame_of
from inventory.yardwork.sharing import booked_at


def combs_of(place, depth, number, day):
    """[(part as the book has it, part it is, how many)]: `number` frames of the depth off the colony, sound ones."""
    books = booked_at([place], day)[place]
    sound = {part: pieces for (part, condition), pieces in books.items() if condition == Condition.SOUND}
    frames = [part for part in sound if part.kind == Kind.FRAME and part.depth == depth and not part.flat]
    frames = [part for part in frames if part.comb in RANKS]
    brood, chosen = frame_of(depth, Comb.DRAWN), []
    for part in sorted(frames, key=_rank):
        pieces = min(number, sound[part])
        if pieces:
            chosen.append((part, part if part.comb == Comb.DRAWN else brood, pieces))
            number -= pieces
    return [*chosen, (brood, brood, number)] if number else chosen


def along(combs, source, target):
    """Entries of combs from one hive to another."""
    for was, becomes, number in combs:
        if was != becomes:
            bench = outside(Location.Kind.BENCH)
            yield Entry(part=was, quantity=number, source=source, target=bench, reason=Reason.DRAWN)
            yield Entry(part=becomes, quantity=number, source=bench, target=source, reason=Reason.DRAWN)
        yield Entry(part=becomes, quantity=number, source=source, target=target, reason=Reason.PLACED)


def dealt(combs, number):
    """The first `number` frames of the combs, and the others."""
    first, others = [], []
    for was, becomes, pieces in combs:
        now = min(number, pieces)
        number -= now
        first += [(was, becomes, now)] if now else []
        others += [(was, becomes, pieces - now)] if pieces - now else []
    return first, others


RANKS = (Comb.DRAWN, Comb.FOUNDATION)  # bare frames carry no bees


def _rank(part):
    return (RANKS.index(Comb(part.comb)), part.comb_use != CombUse.BROOD, part.treated, part.code)
