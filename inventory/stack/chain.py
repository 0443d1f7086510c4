"""The measures of one hive alone: dimension chain at left, width on top, numbered balloons at right. Pure.

Takes a Drawing; gives lines and labels in the drawing's own units (1/16 in).
"""

from dataclasses import dataclass
from itertools import pairwise

from inventory.stack.elevation import CENTRE

BALLOON_APART, TICK_APART = 58, 20
CHAIN_AT, BALLOON_AT = -34, 424
EIGHTHS = {1: "⅛", 2: "¼", 3: "⅜", 4: "½", 5: "⅝", 6: "¾", 7: "⅞"}


@dataclass(frozen=True, kw_only=True)
class Balloon:
    number: int
    name: str
    piece_y: int
    y: int


@dataclass(frozen=True, kw_only=True)
class Measure:
    """One link of the chain: from top to bottom, with its label, empty where it is too short for one."""

    top: int
    bottom: int
    label: str

    @property
    def middle(self):
        return (self.top + self.bottom) // 2


@dataclass(frozen=True, kw_only=True)
class Chain:
    measures: tuple[Measure, ...]
    ticks: tuple[int, ...]
    dots: tuple[int, ...]
    balloons: tuple[Balloon, ...]
    left: int
    right: int
    width_label: str
    top: int
    height: int


def inches(units):
    """Sixteenths of an inch as a joiner writes them: 154 is 9⅝, 91 is 5 11/16."""
    whole, rest = divmod(units, 16)
    if rest % 2:
        return f"{whole} {rest}/16" if whole else f"{rest}/16"
    return f"{whole or ''}{EIGHTHS[rest // 2]}" if rest else str(whole)


def chain_of(drawing):
    """Chain and balloons of a drawing; the stand is ground, not gear, and has no balloon."""
    pieces = [piece for piece in drawing.pieces if piece.name not in ("stand", "quarter of a pallet")]
    boxes = [piece for piece in pieces if piece.box]
    ends = sorted({end for piece in boxes for end in (piece.top, piece.bottom)})
    close = {end for pair in pairwise(ends) if pair[1] - pair[0] < TICK_APART for end in pair}
    balloons = _balloons(pieces, drawing.height)
    return Chain(
        measures=tuple(
            Measure(top=piece.top, bottom=piece.bottom, label=inches(piece.bottom - piece.top))
            for piece in boxes
        ),
        ticks=tuple(end for end in ends if end not in close),
        dots=tuple(sorted(close)),
        balloons=balloons,
        left=CENTRE - drawing.wide // 2,
        right=CENTRE + drawing.wide // 2,
        width_label=inches(drawing.wide),
        top=min((balloon.y for balloon in balloons), default=0) - 24,
        height=drawing.height,
    )


def _balloons(pieces, height):
    """Numbered top down, at least so far apart, pushed up from the ground where they would run past it."""
    middles = [(piece.top + piece.bottom) // 2 for piece in pieces]
    ys: list[int] = []
    for middle in middles:
        ys.append(max(middle, ys[-1] + BALLOON_APART) if ys else middle)
    floor = height - 24
    for number in range(len(ys) - 1, -1, -1):
        ys[number] = min(ys[number], floor)
        floor = ys[number] - BALLOON_APART
    return tuple(
        Balloon(number=number, name=piece.name, piece_y=middle, y=y)
        for number, (piece, middle, y) in enumerate(zip(pieces, middles, ys, strict=True), start=1)
    )
