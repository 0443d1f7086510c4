"""What comes free in one scenario: lost colonies' gear, and the frames bees can draw while a flow lasts.

Takes a projection and the season's gear; gives the sizing problem's arrivals, and the musts that end a flow's drawing.
"""

from planner.requirement.season_gear import plain
from planner.requirement.tokens import DRAWING, RESTED
from planner.sizing.records import Arrival, Use


def arrivals_of(gear, projection):
    """Lost colonies' gear by yard, and drawing by the week in which it becomes possible."""
    found: dict = {}
    for dead in projection.deadouts:
        here = found.setdefault((dead.yard, dead.week), {})
        for part, pieces in dead.returned.items():
            code = plain(part)
            here[code] = here.get(code, 0) + pieces
    for drawing in projection.drawing:
        here = found.setdefault((gear.operation.shed, drawing.week), {})
        here[DRAWING] = here.get(DRAWING, 0) + drawing.frames
    return tuple(
        Arrival(part=part, location=place, period=week, quantity=pieces)
        for part, place, week, pieces in sorted(
            (part, *at, pieces) for at, here in found.items() for part, pieces in here.items()
        )
        if pieces
    )


def ends_of_drawing(gear, projection):
    """What a flow lets bees draw ends with it: by its last week all of it is drawn or let go (see workbench.py)."""
    ends: dict = {}
    for drawing in projection.drawing:
        ends[drawing.last] = ends.get(drawing.last, 0) + drawing.frames
    for week, frames in sorted(ends.items()):
        yield Use(
            code=f"drawing-over/{gear.operation.shed}/{week}",
            location=gear.operation.shed,
            first=week,
            last=week,
            units=frames,
            value=0.0,
            must=True,
            spends={RESTED: 1},
        )
