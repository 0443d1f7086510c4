"""Reads a hive out of the gear booked on a colony. Pure.

Takes lots of gear and the colony's set; gives a Hive to draw and the words of its caption. The books tell how much
of each gear a colony has, not which frame is in which box: brood boxes stand lowest, drawn comb fills from below.
"""

from collections import Counter
from dataclasses import dataclass, replace

from inventory.gear import Comb, CombUse, Depth, Kind
from inventory.stack.elevation import SPACED_FEWER, Box, Hive


@dataclass(frozen=True, kw_only=True)
class Lot:
    """So many pieces of one gear on a colony. `wide` and `tall` in 1/16 in, 0 where the catalogue is silent."""

    kind: str
    quantity: int
    depth: str = ""
    width: int = 0
    comb: str = ""
    comb_use: str = ""
    held: bool = False
    wide: int = 0
    tall: int = 0


def hive_of(lots, *, brood_boxes, dead=False, pallet=False, migratory=False):
    """The hive as it stands. `brood_boxes` counts by depth the boxes of the colony's set, below any excluder."""
    lots = [lot for lot in lots if lot.quantity > 0]
    kinds = {lot.kind for lot in lots}
    boxes, brood = _boxes(lots, Counter(brood_boxes))
    boxes = _filled(boxes, [lot for lot in lots if lot.kind == Kind.FRAME])
    nuc = any(box.nuc for box in boxes)
    return Hive(
        boxes=tuple(boxes),
        floor=nuc or (Kind.FLOOR in kinds and not pallet),
        stand="pallet" if pallet and boxes else "blocks",
        entrance="closed" if dead else "reduced" if Kind.REDUCER in kinds else "open",
        excluder_on=brood if Kind.EXCLUDER in kinds and brood else None,
        feeder=Kind.FEEDER in kinds,
        cover="migratory" if nuc or (migratory and Kind.COVER in kinds) else _cover(kinds),
        inner_cover=Kind.INNER_COVER in kinds,
    )


def words_of(hive):
    """The lines of the caption: boxes by depth from the ground up, then what else shows."""
    if not hive.boxes:
        return ["nothing booked"]
    counted = Counter((box.depth, box.nuc) for box in hive.boxes)
    lines = [f"{number} {depth}{' nuc' if nuc else ''}" for (depth, nuc), number in counted.items()]
    if hive.feeder:
        lines.append("feeder")
    if all(box.held for box in hive.boxes):
        lines.append("all held back")
    elif any(box.held for box in hive.boxes):
        lines.append("partly held back")
    return lines


def _cover(kinds):
    return "telescoping" if Kind.COVER in kinds else ""


def _boxes(lots, brood_boxes):
    """Boxes from the ground up, empty as yet, and how many of them are brood boxes."""
    pool = [lot for lot in lots if lot.kind in (Kind.BOX, Kind.NUC_BOX)]
    pool.sort(key=lambda lot: (list(Depth).index(Depth(lot.depth)), lot.held))
    lowest, above = [], []
    for lot in pool:
        for _number in range(lot.quantity):
            box = Box(depth=lot.depth, width=lot.width, held=lot.held, wide=lot.wide, tall=lot.tall)
            box = replace(box, nuc=lot.kind == Kind.NUC_BOX)
            if brood_boxes[lot.depth] > 0:
                brood_boxes[lot.depth] -= 1
                lowest.append(box)
            else:
                above.append(box)
    return lowest + above, len(lowest)


def _filled(boxes, frames):
    """The boxes with their frames: each depth's frames, drawn comb lowest."""
    filled = list(boxes)
    for depth in {box.depth for box in boxes}:
        numbers = [number for number, box in enumerate(boxes) if box.depth == depth]
        states = _states([lot for lot in frames if lot.depth == depth])
        for number, count in zip(numbers, _shares(states, [boxes[n].width for n in numbers]), strict=True):
            here, states = states[:count], states[count:]
            tally = Counter(state for state, _held in here)
            filled[number] = replace(
                boxes[number],
                drawn=tally[Comb.DRAWN],
                foundation=tally[Comb.FOUNDATION],
                bare=tally[Comb.BARE],
                held=boxes[number].held or any(held for _state, held in here),
            )
    return filled


def _states(frames):
    """(state, held) of every frame of a depth in the order in which they fill boxes from below."""
    order = [Comb.DRAWN, Comb.FOUNDATION, Comb.BARE]
    frames = sorted(
        frames, key=lambda lot: (lot.held, order.index(Comb(lot.comb)), lot.comb_use != CombUse.BROOD)
    )
    return [(Comb(lot.comb), lot.held) for lot in frames for _number in range(lot.quantity)]


def _shares(states, widths):
    """How many of the frames each box takes: even, none more than its width, and of one state where that can be."""
    shares, rest = [], list(states)
    for number, width in enumerate(widths):
        room_above = sum(widths[number + 1 :])
        even = min(width, -(-len(rest) // (len(widths) - number)))
        of_one_state = next((n for n, state in enumerate(rest) if state != rest[0]), 0)
        whole = width - SPACED_FEWER <= of_one_state <= width and len(rest) - of_one_state <= room_above
        shares.append(of_one_state if whole else even)
        rest = rest[shares[-1] :]
    return shares
