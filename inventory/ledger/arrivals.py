"""What came of an order, as it is told: pieces of what was ordered, and other parts that came instead.

Takes Arrivals and Insteads; gives them checked, with the rows they mean, or raises all that is wrong.
"""

from dataclasses import dataclass

from inventory.errors import NothingGiven, NotOnOrder, NotWhole, Refused, UnknownPart, refuse
from inventory.ledger.lines import part_of, parts_by_code, whole
from inventory.models import Part, Substitution
from inventory.orders import OwedRow
from inventory.orders.refusals import MoreSettled, OrderedToo, OtherWidth, SamePart


@dataclass(frozen=True, kw_only=True)
class Arrival:
    """What came of one part: good pieces, broken ones worth mending, broken ones thrown away."""

    part: Part | str
    sound: int = 0
    to_mend: int = 0
    scrapped: int = 0

    @property
    def came(self):
        return self.sound + self.to_mend + self.scrapped


@dataclass(frozen=True, kw_only=True)
class Instead:
    """Another part came instead of so many pieces of one that was ordered; of another width only when allowed."""

    ordered: Part | str
    settles: int
    came: Arrival
    width_allowed: bool = False


@dataclass(frozen=True, kw_only=True)
class Swap:
    """An Instead checked: the owed row it settles, the part that came and its (sound, to mend, scrapped)."""

    row: OwedRow
    settles: int
    part: Part
    counts: list


def checked_arrivals(arrivals, *, enough=False):
    """(part's row, counts) of what came; nothing at all is refused, unless something else was `enough`."""
    catalogue, told = parts_by_code(), []
    problems: list[Refused] = []
    for arrival in arrivals:
        try:
            part, counts = _counted(arrival, catalogue)
            if sum(counts):
                told.append((part, counts))
        except (UnknownPart, NotWhole) as problem:
            problems.append(problem)
    refuse(problems)
    if not told and not enough:
        raise NothingGiven(act="receive")
    return told


def checked_swaps(order, owed, left, substitutes):
    """Swaps, what each settles taken off `left` ({key of an owed row: pieces}); raises all that is wrong."""
    catalogue, swaps = parts_by_code(), []
    problems: list[Refused] = []
    for told in substitutes:
        try:
            swaps.append(_swap(order, owed, left, told, catalogue))
        except Refused as problem:
            problems.append(problem)
    refuse(problems)
    return swaps


def _swap(order, owed, left, told, catalogue):
    ordered, settles = part_of(told.ordered, catalogue), told.settles
    part, counts = _counted(told.came, catalogue)
    whole(ordered, settles)
    whole(part, sum(counts))
    if part == ordered:
        raise SamePart(part=part)
    if not told.width_allowed and part.width and ordered.width and part.width != ordered.width:
        raise OtherWidth(part=part, width=part.width, ordered=ordered, wanted_width=ordered.width)
    rows = [row for row in owed if row.part == ordered]
    if not rows:
        raise NotOnOrder(part=ordered, reference=order.reference)
    row = next((row for row in rows if left[row.key] >= settles), None)
    if row is None:
        most = max(left[row.key] for row in rows)
        raise MoreSettled(reference=order.reference, settles=settles, part=ordered, owed=most)
    if any(other.part == part for other in owed if other.line == row.line):
        raise OrderedToo(part=part, reference=order.reference)
    left[row.key] -= settles
    return Swap(row=row, settles=settles, part=part, counts=counts)


def _counted(arrival, catalogue):
    part = part_of(arrival.part, catalogue)
    return part, [whole(part, n, lowest=0) for n in (arrival.sound, arrival.to_mend, arrival.scrapped)]


def keep_swaps(swaps, act_key):
    """Writes down what came instead of what, beside the act that books it."""
    Substitution.objects.bulk_create(
        Substitution(
            act_key=act_key,
            line=swap.row.line,
            part=swap.row.part,
            settles=swap.settles,
            instead=swap.part,
            pieces=sum(swap.counts),
        )
        for swap in swaps
    )
