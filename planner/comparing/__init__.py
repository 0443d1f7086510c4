"""Two orders beside each other: what changed by line and in money, and why. Pure."""

from planner.comparing.between import Changes, Told, between
from planner.comparing.books import books_of
from planner.comparing.lines import LineChange, line_changes
from planner.comparing.side import SideBySide, side_by_side

__all__ = [
    "Changes",
    "LineChange",
    "SideBySide",
    "Told",
    "between",
    "books_of",
    "line_changes",
    "side_by_side",
]
