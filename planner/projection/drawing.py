"""What bees draw: so many frames a colony in each flow, some while they build up, none in a dearth.

Takes living colonies by class and the splits; gives frames by flow, from its first visit to its last week.
"""

from planner.projection.records import Drawing
from planner.season.calendar import circuit_of, period_of, piece_of

SPRING_DRAWING_SHARE = 0.5  # of a flow's, while colonies build up: judgement
BUILD_UP = "build-up"


def drawing(operation, assumptions, classes):
    """Frames that can be drawn, by flow of a name: the classes' limits at its first visit."""
    yards = operation.yards_by_code
    frames: dict = {}
    for flow_class in classes:
        yard = yards[flow_class.yard]
        for window in yard.windows:
            piece = piece_of(assumptions.start, assumptions.weeks, window)
            key = window.name, circuit_of(yard, assumptions).before(piece.first), piece.last
            rest = (piece.last - piece.first + 1) / piece.of_weeks if assumptions.began_before else 1
            count = flow_class.colonies[piece.first]
            frames[key] = frames.get(key, 0) + int(count * assumptions.drawn_by(flow_class.strength) * rest)
    return _drawings(frames)


def build_up_drawing(operation, assumptions, classes, splits):
    """Half of a flow's before the first flow, and a few by fed splits until they are hived."""
    start, weeks = assumptions.start, assumptions.weeks
    usual = period_of(start, weeks, assumptions.second_box_week)
    yards = operation.yards_by_code
    first = min((circuit_of(yard, assumptions).before(usual) for yard in yards.values()), default=usual)
    flows = [piece_of(start, weeks, window).first for yard in operation.yards for window in yard.windows]
    last = min((week - 1 for week in flows if week > usual), default=weeks - 1)
    build_up = sum(
        flow_class.colonies[usual] * assumptions.drawn_by(flow_class.strength) * SPRING_DRAWING_SHARE
        for flow_class in classes
    )
    frames = {(BUILD_UP, first, max(first, last)): build_up}
    for split in splits:
        key = "splits", split.week, max(split.week, split.hive_week)
        frames[key] = frames.get(key, 0) + split.attempts * assumptions.drawn_weak
    return _drawings(frames)


def _drawings(frames):
    return tuple(
        Drawing(window=name, week=week, last=last, frames=number)
        for (name, week, last), number in sorted(frames.items(), key=lambda item: (item[0][1:], item[0][0]))
        if number
    )
