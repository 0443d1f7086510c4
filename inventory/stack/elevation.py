"""A hive as a joiner's elevation, to scale: one unit is 1/16 in, all whole numbers. Pure.

Takes a Hive (boxes from the ground up, what lies on and under them); gives paths with the class that draws each,
and where each piece stands. Does not know the books: hive.py reads a hive out of a list of gear.
"""

from dataclasses import dataclass

CELL, CENTRE = 340, 170
HEIGHTS = {"deep": 154, "medium": 106, "shallow": 91}
WIDTHS = {10: 260, 8: 220, 5: 144}
STAND, NUC_STAND, STAND_TALL = 56, 40, 48
PALLET, FLOOR, SLOT, REDUCED = 48, 30, 12, 60
EXCLUDER, FEEDER = 10, 54
COVER, COVER_LAP, COVER_WIDER = 38, 14, 24
MIGRATORY = 28
PITCH, WALL, HELD_PITCH = 22, 12, 32
SPACED_FEWER = 2  # a box for ten holds as few as eight drawn combs, spaced
BAR_WIDE, BAR_TALL, BAR_BELOW, FRAME_END = 16, 4, 8, 8


@dataclass(frozen=True, kw_only=True)
class Box:
    """One box and the frames in it by state. `width` is in frames; `wide` and `tall` in units, 0: the usual."""

    depth: str
    width: int
    drawn: int = 0
    foundation: int = 0
    bare: int = 0
    held: bool = False
    nuc: bool = False
    wide: int = 0
    tall: int = 0

    def __post_init__(self):
        if self.depth not in HEIGHTS:
            raise ValueError(f"a box is {', '.join(HEIGHTS)}, not {self.depth!r}")
        if min(self.drawn, self.foundation, self.bare) < 0 or self.frames > self.width:
            raise ValueError(f"{self.frames} frames do not go into a box for {self.width}")
        object.__setattr__(self, "wide", self.wide or WIDTHS.get(self.width, PITCH * self.width + 40))
        object.__setattr__(self, "tall", self.tall or HEIGHTS[self.depth])

    @property
    def frames(self):
        return self.drawn + self.foundation + self.bare


@dataclass(frozen=True, kw_only=True)
class Hive:
    """Boxes from the ground up; the excluder lies on so many of them. Words are those of the drawing."""

    boxes: tuple[Box, ...] = ()
    floor: bool = True
    stand: str = "blocks"  # blocks, pallet, or empty
    entrance: str = "open"  # open, reduced, closed
    excluder_on: int | None = None
    feeder: bool = False
    cover: str = "telescoping"  # telescoping, migratory, or empty
    inner_cover: bool = True

    def __post_init__(self):
        if self.excluder_on is not None and not 0 < self.excluder_on <= len(self.boxes):
            raise ValueError("an excluder lies on a box of the hive")


@dataclass(frozen=True, kw_only=True)
class Shape:
    css: str
    d: str


@dataclass(frozen=True, kw_only=True)
class Piece:
    """Where one piece of the hive stands: its middle for the balloon, top and bottom for the chain."""

    name: str
    top: int
    bottom: int
    box: Box | None = None


@dataclass(frozen=True, kw_only=True)
class Drawing:
    height: int
    shapes: tuple[Shape, ...]
    pieces: tuple[Piece, ...] = ()  # top down
    wide: int = WIDTHS[10]


def draw(hive, *, height=None):
    """The hive on its ground line. Upright, the drawing is as tall as the hive unless `height` asks for more."""
    tall = height or height_of(hive)
    pen = _Pen(tall, max((box.wide for box in hive.boxes), default=WIDTHS[10]))
    pen.stand(hive)
    if hive.floor:
        pen.floor(hive.entrance)
    for number, box in enumerate(hive.boxes, start=1):
        pen.box(box)
        if number == hive.excluder_on:
            pen.excluder(box)
    if hive.feeder:
        pen.feeder()
    pen.cover(hive)
    return Drawing(height=tall, shapes=tuple(pen.shapes), pieces=tuple(reversed(pen.pieces)), wide=pen.wide)


def height_of(hive):
    """Units from the ground to the top of the cover, with one to spare for the line."""
    tall = {"blocks": STAND_TALL, "pallet": PALLET}.get(hive.stand, 0) + FLOOR * hive.floor
    tall += sum(box.tall for box in hive.boxes) + FEEDER * hive.feeder
    tall += EXCLUDER * (hive.excluder_on is not None)
    return (
        tall + {"telescoping": COVER - COVER_LAP, "migratory": MIGRATORY - COVER_LAP}.get(hive.cover, 0) + 2
    )


def rectangle(left, top, wide, tall):
    return f"M{left} {top}h{wide}v{tall}h{-wide}z"


def places(box):
    """The middles of a box's frames, left to right: at pitch when full or part filled, spread when spaced."""
    inside = box.wide - 2 * WALL
    if box.width - SPACED_FEWER <= box.frames < box.width:
        left = CENTRE - inside // 2
        return [left + (2 * number + 1) * inside // (2 * box.frames) for number in range(box.frames)]
    first = CENTRE - (box.width - 1) * PITCH // 2
    return [first + number * PITCH for number in range(box.frames)]


def crosshatch(left, top, wide, tall, pitch=HELD_PITCH):
    """Lines at 45° both ways, cut at the edges of the rectangle."""
    parts = []
    for step in range(pitch // 2, wide + tall, pitch):
        x0, y0 = (step, 0) if step <= wide else (wide, step - wide)
        x1, y1 = (0, step) if step <= tall else (step - tall, tall)
        parts.append(f"M{left + x0} {top + y0}L{left + x1} {top + y1}")
        parts.append(f"M{left + wide - x0} {top + y0}L{left + wide - x1} {top + y1}")
    return "".join(parts)


class _Pen:
    """Draws from the ground up; `y` is the top of what stands so far."""

    def __init__(self, tall, wide):
        self.y, self.wide = tall, wide
        self.shapes, self.pieces = [], []

    def ink(self, css, d):
        if d:
            self.shapes.append(Shape(css=css, d=d))

    def piece(self, name, tall, box=None):
        self.pieces.append(Piece(name=name, top=self.y - tall, bottom=self.y, box=box))
        self.y -= tall

    def stand(self, hive):
        left, top = CENTRE - self.wide // 2, self.y - STAND_TALL
        if hive.stand == "blocks":
            block = NUC_STAND if self.wide <= WIDTHS[5] else STAND
            inset = 12 if self.wide <= WIDTHS[5] else 20
            for x in (left + inset, left + self.wide - inset - block):
                self.ink("thin", f"M{x} {top}l{block} {STAND_TALL}M{x + block} {top}l{-block} {STAND_TALL}")
                self.ink("box", rectangle(x, top, block, STAND_TALL))
            self.piece("stand", STAND_TALL)
        elif hive.stand == "pallet":
            slats = rectangle(4, top, CELL - 8, 12) + rectangle(4, self.y - 8, CELL - 8, 8)
            runners = "".join(rectangle(x, top + 12, 24, PALLET - 20) for x in (4, CENTRE - 12, CELL - 28))
            self.ink("box", slats + runners)
            self.piece("quarter of a pallet", PALLET)

    def floor(self, entrance):
        left, top = CENTRE - self.wide // 2, self.y - FLOOR
        self.ink("box", rectangle(left, top, self.wide, FLOOR))
        inside, slot = self.wide - 24, top + 4
        if entrance == "open":
            self.ink("thin", rectangle(left + 12, slot, inside, SLOT))
        else:
            gap = REDUCED if entrance == "reduced" else 0
            bar = (inside - gap) // 2
            self.ink("thin", rectangle(left + 12, slot, inside, SLOT))
            self.ink(
                "solid thin",
                rectangle(left + 12, slot, bar, SLOT) + rectangle(left + 12 + inside - bar, slot, bar, SLOT),
            )
        self.piece("floor", FLOOR)

    def box(self, box):
        left, top = CENTRE - box.wide // 2, self.y - box.tall
        if box.held:
            self.ink("thin", crosshatch(left, top, box.wide, box.tall))
        else:
            self.frames(box, top)
        self.ink("box", rectangle(left, top, box.wide, box.tall))
        self.piece(f"{box.depth} nuc" if box.nuc else box.depth, box.tall, box)

    def frames(self, box, top):
        bar, end = top + BAR_BELOW, top + box.tall - FRAME_END
        across = places(box)
        drawn, rest = across[: box.drawn], across[box.drawn :]
        foundation, bare = rest[: box.foundation], rest[box.foundation :]
        bars = "".join(rectangle(x - BAR_WIDE // 2, bar, BAR_WIDE, BAR_TALL) for x in across)
        self.ink("topbar", bars)
        self.ink("drawn", "".join(f"M{x} {bar + BAR_TALL}V{end}" for x in drawn))
        self.ink("thin", "".join(f"M{x} {bar + BAR_TALL}V{end}" for x in drawn))
        self.ink("thin", "".join(f"M{x} {bar + BAR_TALL}V{end}" for x in foundation))
        outline = f"v{end - bar - BAR_TALL}h12v{bar + BAR_TALL - end}"
        self.ink("thin", "".join(f"M{x - 6} {bar + BAR_TALL}{outline}" for x in bare))

    def excluder(self, box):
        left, top = CENTRE - box.wide // 2, self.y - EXCLUDER
        bars = "".join(f"M{left + x} {top}v{EXCLUDER}" for x in range(10, box.wide, 10))
        self.ink("thin", bars)
        self.ink("box", rectangle(left, top, box.wide, EXCLUDER))
        self.piece("excluder", EXCLUDER)

    def feeder(self):
        left, top = CENTRE - self.wide // 2, self.y - FEEDER
        tray = (self.wide - 52) // 2
        trays = rectangle(left + 16, top + 10, tray, FEEDER - 18)
        trays += rectangle(left + self.wide - 16 - tray, top + 10, tray, FEEDER - 18)
        self.ink("hidden-line thin", trays)
        self.ink("box", rectangle(left, top, self.wide, FEEDER))
        self.piece("feeder", FEEDER)

    def cover(self, hive):
        if hive.cover == "telescoping":
            wide, tall = self.wide + COVER_WIDER, COVER
        elif hive.cover == "migratory":
            wide, tall = self.wide, MIGRATORY
        else:
            return
        left, top = CENTRE - wide // 2, self.y + COVER_LAP - tall
        self.ink("paper box", rectangle(left, top, wide, tall))
        if hive.cover == "telescoping":
            self.ink("thin", f"M{left} {top + 10}h{wide}")
            if hive.inner_cover:
                self.ink("hidden-line thin", f"M{left + 12} {self.y}h{wide - 24}")
            self.piece("outer and inner cover" if hive.inner_cover else "outer cover", tall - COVER_LAP)
        else:
            self.ink("thin", f"M{left} {self.y}h{wide}")
            self.piece("migratory cover", tall - COVER_LAP)
