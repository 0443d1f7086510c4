"""Whether the planned trips carry all that each season asks for, and which second trips are worth keeping free for.

Takes the wants of seasons, what rides out in each, the truck and the trips by yard and week; gives the trips missing by
season and week, the fewest to keep free, and for each season the first that is still missing. Pounds and cubic feet are
both held, frames riding in their boxes; a trip carries both ways.
"""

import math
from collections import defaultdict
from dataclasses import dataclass

import numpy as np

from inventory.truckload import CUBIC_IN_A_FOOT, SPACING
from planner.after.targets import MOST, TINY, at_level, whole

OUT, HOME = "gear to bring", "full supers to take home"
PLANNED_FOR = 0.95  # of the seasons planned with, so that fresh ones come to about nine in ten: judgement


@dataclass(frozen=True, kw_only=True)
class Missing:
    """Of one yard, season × week: trips beyond those planned, and whether it is full supers that ask for them."""

    trips: np.ndarray
    home: np.ndarray

    def what(self, season, week):
        return HOME if self.home[season, week] else OUT


def missing_trips(wants, out, truck, trips, syrup):
    """yard -> Missing. `out`: (yard, kind) -> pieces brought; `trips`: yard -> trips by week; `syrup`: yard -> lb by week."""
    found = {}
    for yard, count in trips.items():
        rows = {kind: pieces for (at, kind), pieces in out.items() if at == yard}
        going = _loads_out(wants, rows, truck, syrup.get(yard, 0.0))
        coming = _loads_home(wants, truck, [key for key in wants.keys if key[0] == yard])
        asked = np.ceil(np.maximum(going, coming) - TINY)
        found[yard] = Missing(trips=np.maximum(asked - count, 0).astype(int), home=coming >= going)
    return found


def kept_free(missing, weights):
    """(yard, week) -> trips to keep free: each yard's own nine seasons of ten, then the fewest more until enough seasons
    have all their trips."""
    free: dict = defaultdict(int)
    for yard, found in missing.items():
        for week, trips in enumerate(whole(at_level(found.trips, weights, MOST))):
            if trips:
                free[yard, week] = int(trips)
    while True:
        lacks = [_lacks(missing, free, season) for season in range(len(weights))]
        if sum(w for w, lack in zip(weights, lacks, strict=True) if not lack) >= PLANNED_FOR - TINY:
            return dict(sorted(free.items(), key=lambda item: (item[0][1], item[0][0])))
        for key, trips in min((lack for lack in lacks if lack), key=lambda lack: sum(lack.values())).items():
            free[key] += trips


def first_full(missing, free, seasons):
    """For each season the first (yard, what, week, trips missing), or None."""
    first: list = [None] * seasons
    for season in range(seasons):
        lacks = _lacks(missing, free, season)
        if lacks:
            yard, week = min(lacks, key=lambda key: (key[1], key[0]))
            first[season] = yard, missing[yard].what(season, week), week, lacks[yard, week]
    return first


def _lacks(missing, free, season):
    found = {}
    for yard, rows in missing.items():
        for week in np.flatnonzero(rows.trips[season]):
            lack = int(rows.trips[season, week]) - free.get((yard, int(week)), 0)
            if lack > 0:
                found[yard, int(week)] = lack
    return found


def _loads_out(wants, rows, truck, syrup_lb):
    """Truckloads out by season and week, the tighter of weight and room."""
    shape = len(wants.weights), wants.periods
    lb, feet = np.zeros(shape) + syrup_lb, np.zeros(shape)
    feet += lb / float(truck.piece("syrup-2:1").lb) * cubic_ft(truck, "syrup-2:1")
    for kind, pieces in rows.items():
        if not truck.takes({(kind, False): 1}):
            continue
        lb += pieces * float(truck.piece(kind).lb)
        feet += pieces * cubic_ft(truck, kind)
    return np.maximum(lb / float(truck.lb), feet / float(truck.cubic_ft))


def _loads_home(wants, truck, keys):
    shape = len(wants.weights), wants.periods
    lb, feet = np.zeros(shape), np.zeros(shape)
    for key in keys:
        pulled = wants.at("pulled", key)
        full = key[1].startswith("box-")
        one = truck.load({(key[1], full): 1})
        if one.lb > truck.lb or one.cubic_ft > truck.cubic_ft:
            continue
        lb += pulled * float(one.lb)
        feet += pulled * cubic_ft(truck, key[1])
    return np.maximum(lb / float(truck.lb), feet / float(truck.cubic_ft))


def cubic_ft(truck, part):
    """Room of one piece on the truck; frames ride inside."""
    piece = truck.piece(part)
    return 0.0 if piece.rides else float(piece.cubic_in * SPACING / CUBIC_IN_A_FOOT)


def trips_words(missing):
    return "1 trip" if math.ceil(missing) == 1 else f"{math.ceil(missing)} trips"
