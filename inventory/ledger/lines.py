"""What an act is told: lines of part, quantity and condition, checked against the catalogue all at once.

Takes lines as callers write them (a part by code or row); gives lines with rows, alike ones summed.
"""

from dataclasses import dataclass

from inventory.errors import NothingGiven, NotWhole, Refused, UnknownCondition, UnknownPart, refuse
from inventory.gear import Condition
from inventory.models import Part

MOST = 1_000_000  # pieces in one line; more is a slip of the finger


@dataclass(frozen=True)
class Line:
    """So many pieces of a part in a condition. `part` is a Part or its code."""

    part: Part | str
    quantity: int
    condition: Condition = Condition.SOUND


def parts_by_code():
    return Part.objects.in_bulk(field_name="code")


def part_of(part, catalogue):
    """The row of a part given as row or code; UnknownPart where there is none."""
    code = part.code if isinstance(part, Part) else part
    if code not in catalogue:
        raise UnknownPart(part=code)
    return catalogue[code]


def whole(part, quantity, *, lowest=1):
    """The quantity, if it is a whole number of pieces within bounds."""
    if isinstance(quantity, bool) or not isinstance(quantity, int) or not lowest <= quantity <= MOST:
        raise NotWhole(part=part, quantity=quantity, lowest=lowest, highest=MOST)
    return quantity


def checked(lines, *, act, lowest=1, catalogue=None):
    """Lines with their part rows, alike ones summed in the order given; raises everything that is wrong."""
    catalogue = parts_by_code() if catalogue is None else catalogue
    sums: dict[tuple, int] = {}
    problems: list[Refused] = []
    for line in lines:
        try:
            part = part_of(line.part, catalogue)
            key = (part, condition_of(part, line.condition))
            sums[key] = sums.get(key, 0) + whole(part, line.quantity, lowest=lowest)
        except (UnknownPart, NotWhole, Refused, UnknownCondition) as problem:
            problems.append(problem)
    refuse(problems)
    if not sums:
        raise NothingGiven(act=act)
    return [Line(part, quantity, condition) for (part, condition), quantity in sums.items()]


def condition_of(part, word):
    try:
        return Condition(word)
    except ValueError:
        raise UnknownCondition(part=part, condition=word) from None
