"""Boxes about to go on or come off a drawn hive, as marks over its drawing. Pure.

Takes a drawing and the box's measures; gives Marks in the order in which they are set. The drawing itself is
elevation.py's; a mark above the hive has a y below zero.
"""

from dataclasses import dataclass

from inventory.stack.elevation import CENTRE, HEIGHTS, PITCH, WIDTHS, rectangle

CLEAR = 14


@dataclass(frozen=True, kw_only=True)
class Mark:
    """One box: left and top in units of the drawing, and its measures."""

    x: int
    y: int
    wide: int
    tall: int


def going_on(drawing, *, depth, width, most):
    """Boxes on top of the hive, one above the other."""
    top = drawing.pieces[0].top if drawing.pieces else drawing.height
    wide, tall = _measures(depth, width)
    return [Mark(x=CENTRE - wide // 2, y=top - n * tall, wide=wide, tall=tall) for n in range(1, most + 1)]


def coming_off(drawing, *, depth, width, booked, most):
    """The topmost booked boxes of that depth, from above; more than are booked stand dashed above the hive."""
    boxes = [piece for piece in drawing.pieces if piece.box is not None and piece.box.depth == depth]
    marks = [_around(piece) for piece in boxes[: min(booked, most)]]
    return marks + going_on(drawing, depth=depth, width=width, most=most - len(marks))


def _around(piece):
    """A mark a little wider than its box, so that it is seen beside the box's own lines."""
    wide = piece.box.wide + 2 * CLEAR
    return Mark(x=CENTRE - wide // 2, y=piece.top, wide=wide, tall=piece.bottom - piece.top)


def path_of(marks):
    """One path for all of them."""
    return "".join(rectangle(mark.x, mark.y, mark.wide, mark.tall) for mark in marks)


def rise_of(marks):
    """Units by which the marks stand above the top of the drawing, with one to spare for the line."""
    return max((2 - mark.y for mark in marks if mark.y < 2), default=0)


def _measures(depth, width):
    return WIDTHS.get(width, PITCH * width + 40), HEIGHTS[depth]
