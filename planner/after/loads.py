"""Lots put on trips: within the truck's weight and room, on visits that are due, extra trips only where none fits.

Takes a yard's visits, what must come home when, and lots to be brought with the weeks in which each may travel; gives
trips. Sweeps back from the last week: a lot that can still go earlier gives way to one that cannot, and an extra trip
is opened only for what cannot go earlier still. For pieces of one kind no plan has fewer extra trips;
mixed pieces now and then take one more than they must.
"""

from collections import Counter
from dataclasses import dataclass, field

from planner.after.records import EXTRA, VISIT


@dataclass(kw_only=True)
class Lot:
    """Pieces that travel together in proportion: {(part, full): pieces}, any week from `release` to `due`."""

    cargo: dict
    release: int
    due: int

    @property
    def left(self):
        return any(self.cargo.values())

    def take(self, truck, beside):
        """Takes off the lot what still fits beside a cargo; gives it."""
        whole = dict(self.cargo)
        steps = max(whole.values(), default=0)
        least, most = 0, steps
        while least < most:
            middle = (least + most + 1) // 2
            if truck.takes(joined(beside, _portion(whole, middle, steps))):
                least = middle
            else:
                most = middle - 1
        taken = {key: n for key, n in _portion(whole, least, steps).items() if n}
        self.cargo = {key: n - taken.get(key, 0) for key, n in whole.items()}
        return taken


@dataclass(kw_only=True)
class Trip:
    week: int
    rides: str
    out: dict = field(default_factory=dict)
    home: dict = field(default_factory=dict)
    until: int | None = None  # the week by which the first of what it brings is due; None: the week is fixed


class TooLarge(Exception):
    """A single piece that the empty truck does not take; names it."""

    def __init__(self, part):
        self.part = part
        super().__init__(f"one piece of {part} is more than the truck takes")


def trips_of(truck, visits, lots, *, full, spare):
    """The yard's trips in order of weeks. `full`: week -> cargo that must come home then; `spare`: week -> cargo that
    comes home from then on as room allows. What finds no room is given back too: (trips, {key: pieces left})."""
    trips: dict = {week: [Trip(week=week, rides=VISIT)] for week in visits}
    left = _bring_home(truck, trips, full, spare)
    _bring_out(truck, trips, lots)
    flat = [trip for week in sorted(trips) for trip in trips[week] if trip.out or trip.home]
    return _as_late_as_may_be(flat), left


def joined(cargo, more):
    together = Counter(cargo)
    together.update(more)
    return dict(together)


def _portion(cargo, step, steps):
    return {key: pieces * step // steps for key, pieces in cargo.items()} if steps else {}


def _bring_home(truck, trips, full, spare):
    waiting: Counter = Counter()
    for week in sorted({*trips, *full, *spare}):
        if full.get(week):
            lot = Lot(cargo=dict(full[week]), release=week, due=week)
            _fill(truck, trips, week, lot, "home", extra=True)
        waiting.update(spare.get(week, {}))
        if any(waiting.values()) and trips.get(week):
            lot = Lot(cargo=dict(waiting), release=week, due=week)
            _fill(truck, trips, week, lot, "home", extra=False)
            waiting = Counter(lot.cargo)
    return {key: pieces for key, pieces in waiting.items() if pieces}


def _bring_out(truck, trips, lots):
    lots = [lot for lot in lots if lot.left]
    for week in range(max([0, *trips, *(lot.due for lot in lots)]), -1, -1):
        able = [lot for lot in lots if lot.left and lot.release <= week <= lot.due]
        able.sort(key=lambda lot: (-lot.release, -lot.due))
        for lot in able:
            _fill(truck, trips, week, lot, "out", extra=False)
        for lot in able:
            _fill(truck, trips, week, lot, "out", extra=lot.release == week)


def _as_late_as_may_be(trips):
    """Extra trips go when the first of what they bring is due: sweeping back has put them where it is only just there."""
    for trip in trips:
        if trip.rides == EXTRA and trip.until is not None:
            trip.week = max(trip.week, trip.until)
    return sorted(trips, key=lambda trip: (trip.week, trip.rides == EXTRA))


def _fill(truck, trips, week, lot, way, *, extra):
    """Puts the lot on the week's trips; on extra ones too where it must."""
    for trip in trips.get(week, ()):
        _load(truck, trip, lot, way)
    while extra and lot.left:
        trip = Trip(week=week, rides=EXTRA)
        if not _load(truck, trip, lot, way):
            _load_singly(truck, trip, lot, way)
        trips.setdefault(week, []).append(trip)


def _load(truck, trip, lot, way):
    there = getattr(trip, way)
    taken = lot.take(truck, there) if lot.left else {}
    setattr(trip, way, joined(there, taken))
    if taken and not trip.home:
        trip.until = lot.due if trip.until is None else min(trip.until, lot.due)
    return bool(taken)


def _load_singly(truck, trip, lot, way):
    """A lot so mixed that its first step is too much: part by part. A piece too large for the truck is refused."""
    for key in list(lot.cargo):
        single = Lot(cargo={key: lot.cargo[key]}, release=lot.release, due=lot.due)
        if single.left:
            _load(truck, trip, single, way)
            lot.cargo[key] = single.cargo[key]
    if not getattr(trip, way):
        raise TooLarge(next(part for (part, _full), pieces in lot.cargo.items() if pieces))
