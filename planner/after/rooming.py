"""Whether the planned trips have room for what each season wants, whatever each loads on them.

Takes the wants of seasons, the yards' own stock, the truck and the trips by yard and week; gives for each season the
first (yard, way, week, trips missing) or None. On the way out a visit may bring what later weeks want; full supers come
home on the trips of their week. Pounds and cubic feet are both held, frames riding in their boxes.
"""

import math

import numpy as np

from inventory.truckload import CUBIC_IN_A_FOOT, SPACING
from planner.after.targets import net_need

OUT, HOME = "gear to bring", "full supers to take home"
TINY = 1e-6


def first_full(wants, own, truck, trips, syrup):
    """`trips`: yard -> trips by week; `syrup`: yard -> lb of syrup by week (season × week, or one for all)."""
    first: list = [None] * len(wants.weights)
    for yard, count in trips.items():
        keys = [key for key in wants.keys if key[0] == yard]
        if not keys:
            continue
        out = _loads_out(wants, own, truck, keys, syrup.get(yard, 0.0))
        home = _loads_home(wants, truck, keys)
        for way, missing in ((OUT, _spilled(out, count)), (HOME, _over(home, count))):
            for number in np.flatnonzero((missing > 0).any(axis=1)):
                week = int(np.argmax(missing[number] > 0))
                if first[number] is None or week < first[number][2]:
                    first[number] = yard, way, week, int(missing[number, week])
    return first


def _loads_out(wants, own, truck, keys, syrup_lb):
    """Truckloads out by season and week, the tighter of weight and room."""
    shape = len(wants.weights), wants.periods
    lb, feet = np.zeros(shape) + syrup_lb, np.zeros(shape)
    feet += lb / float(truck.piece("syrup-2:1").lb) * cubic_ft(truck, "syrup-2:1")
    for key in keys:
        net = np.maximum(net_need(wants, own, key), 0)
        more = np.maximum(np.diff(net, axis=1, prepend=0), 0)
        lb += more * float(truck.piece(key[1]).lb)
        feet += more * cubic_ft(truck, key[1])
    return np.maximum(lb / float(truck.lb), feet / float(truck.cubic_ft))


def _loads_home(wants, truck, keys):
    shape = len(wants.weights), wants.periods
    lb, feet = np.zeros(shape), np.zeros(shape)
    for key in keys:
        pulled = wants.at("pulled", key)
        full = key[1].startswith("box-")
        one = truck.load({(key[1], full): 1})
        lb += pulled * float(one.lb)
        feet += pulled * cubic_ft(truck, key[1])
    return np.maximum(lb / float(truck.lb), feet / float(truck.cubic_ft))


def cubic_ft(truck, part):
    """Room of one piece on the truck; frames ride inside."""
    piece = truck.piece(part)
    return 0.0 if piece.rides else float(piece.cubic_in * SPACING / CUBIC_IN_A_FOOT)


def _spilled(loads, trips):
    """Trips missing by the week at whose start nothing earlier is left to bring more."""
    missing = np.zeros(loads.shape)
    spill = np.zeros(loads.shape[0])
    for week in range(loads.shape[1] - 1, -1, -1):
        spill = np.maximum(loads[:, week] + spill - trips[week], 0.0)
    missing[:, 0] = np.ceil(spill - TINY)
    return missing


def _over(loads, trips):
    return np.maximum(np.ceil(loads - TINY) - np.array(trips), 0)


def trips_words(missing):
    return "1 trip" if math.ceil(missing) == 1 else f"{math.ceil(missing)} trips"
