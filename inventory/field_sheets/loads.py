"""A load on paper: what goes on the truck, for which stop, what each line weighs and how much room it takes.

Takes [(stop, [(row, pieces, of them full of honey)])]; gives a LoadList. Rows come boxes before frames, as the
pages list them, so that each line's room adds up to the load's: frames ride in the boxes that stand before them.
"""

from dataclasses import dataclass
from decimal import Decimal

from inventory.gear import Condition
from inventory.load_sums import Weighed, comb_weights, honey_lb, piece_of, truck
from inventory.pieces import Row, many
from inventory.truckload import Load, load_of


@dataclass(frozen=True, kw_only=True)
class LoadLine:
    """One line: pieces with their unit, and what it adds to the load in lb and cubic feet."""

    name: str
    pieces: int
    unit: str
    full: int
    lb: Decimal
    cubic_ft: Decimal
    held: bool

    @property
    def in_boxes(self):
        """Takes no room of its own: it rides in the boxes before it."""
        return not self.cubic_ft


@dataclass(frozen=True, kw_only=True)
class Stop:
    """What is dropped at one place."""

    place: object
    lines: tuple[LoadLine, ...]

    @property
    def lb(self):
        return sum((line.lb for line in self.lines), Decimal(0))

    @property
    def cubic_ft(self):
        return sum((line.cubic_ft for line in self.lines), Decimal(0))


@dataclass(frozen=True, kw_only=True)
class LoadList:
    stops: tuple[Stop, ...]
    weighed: Weighed

    @property
    def has_held(self):
        return any(line.held for stop in self.stops for line in stop.lines)


def load_list(drops):
    """The list of a load; stops at which nothing is dropped are left out."""
    combs = comb_weights()
    carried: list = []
    honey, stops = Decimal(0), []
    for place, rows in drops:
        lines = []
        for row, pieces, full in rows:
            before = load_of(carried, honey_lb=honey)
            carried.append((piece_of(row.part), pieces))
            honey += honey_lb(row.part, combs) * full
            lines.append(_line(row, pieces, full, before, load_of(carried, honey_lb=honey)))
        if lines:
            stops.append(Stop(place=place, lines=tuple(lines)))
    return LoadList(stops=tuple(stops), weighed=Weighed(load=load_of(carried, honey_lb=honey), truck=truck()))


def _line(row: Row, pieces, full, before: Load, after: Load):
    return LoadLine(
        name=row.name,
        pieces=pieces,
        unit="" if row.part.unit == "piece" else many(row.part.unit, pieces),
        full=full,
        lb=after.lb - before.lb,
        cubic_ft=after.cubic_ft - before.cubic_ft,
        held=row.condition == Condition.HELD,
    )
