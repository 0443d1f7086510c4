"""How much is brought to each yard by which week, and what comes home: the fixed plan's whole pieces.

Takes the wants, the stock at the yards and the gear there is; gives (yard, part) -> Course. Each yard gets what most of
its seasons put to use. Where that adds up to more than there is, all yards together get what most seasons put to use at
most, each its share of the mean need, and the rest stays in the shed for later visits. What is not wanted again at a
yard within some weeks comes home.
"""

from collections import defaultdict
from dataclasses import dataclass

import numpy as np

from planner.projection.colonies import allot

MOST = 0.9  # of the seasons: planned for is what so many ask for at most; judgement
STAYS_WEEKS = 8  # gear wanted again at its yard within so many weeks stays there: judgement
TINY = 1e-6


@dataclass(frozen=True, kw_only=True)
class Course:
    """Whole pieces of one part at one yard by week: brought out, taken home, of those full of honey."""

    yard: str
    part: str
    out: tuple[int, ...]
    home: tuple[int, ...]
    full: tuple[int, ...]


def courses_of(wants, own, exists=None):
    """Courses of all parts that the seasons want, find or leave at a yard. `own`: (yard, part) -> pieces by week;
    `exists`: part -> pieces there are beyond those, by week (None: no end of any)."""
    yards: dict = defaultdict(list)
    for yard, part in sorted({*wants.keys, *own}):
        yards[part].append(yard)
    found = {}
    for part, at in yards.items():
        keys = [(yard, part) for yard in at]
        net = np.array([net_need(wants, own, key) for key in keys])
        needs = shares(np.maximum(net, 0), wants.weights, (exists or {}).get(part))
        free = np.minimum(whole(net.max(axis=1)), 0)
        pulled = each_own(np.array([wants.at("pulled", key) for key in keys]), wants.weights)
        for key, need, spare, off in zip(keys, needs, free, pulled, strict=True):
            course = _course(key, np.where(need > 0, need, spare), off, stock=own.get(key))
            if any(course.out) or any(course.home):
                found[key] = course
    return found


def shares(rows, weights, exists=None):
    """(yard × season × week) -> whole pieces (yard × week): each yard's own, or its share where there is not enough."""
    own = each_own(rows, weights)
    if exists is None:
        return own
    totals = np.minimum(whole(at_level(rows.sum(axis=0), weights, MOST)), exists)
    means = np.einsum("yst,s->yt", rows, weights)
    shared = np.array([allot(int(total), means[:, week]) for week, total in enumerate(totals)]).T
    return np.where(own.sum(axis=0) <= exists, own, shared)


def each_own(rows, weights):
    """What most of each yard's own seasons ask for at most."""
    return np.array([whole(at_level(each, weights, MOST)) for each in rows])


def at_level(rows, weights, level):
    """For each week the least value that the level's share of seasons does not exceed."""
    order = np.argsort(rows, axis=0, kind="stable")
    reached = np.cumsum(weights[order], axis=0)
    row = np.minimum((reached < level - TINY).sum(axis=0), len(weights) - 1)
    return np.take_along_axis(rows, order, axis=0)[row, np.arange(rows.shape[1])]


def net_need(wants, own, key):
    """Pieces to be brought from elsewhere by each week, season by season; below 0 what is free to be taken away."""
    return wants.at("kept", key) - wants.at("found", key) - own.get(key, 0)


def whole(values):
    return np.ceil(np.asarray(values) - TINY).astype(int)


def _course(key, need, pulled, *, stock):
    periods = len(need)
    held = 0
    there = np.zeros(periods) if stock is None else np.asarray(stock)
    out, home, full = (np.zeros(periods, dtype=int) for _ in range(3))
    for week in range(periods):
        off = int(min(pulled[week], max(0, held + there[week])))
        wanted = int(need[week])
        again = int(need[week : week + STAYS_WEEKS + 1].max())
        full[week] = off
        held -= off
        if held < wanted:
            out[week] = wanted - held
        elif held > again:
            home[week] = held - again
        held += out[week] - home[week]
        home[week] += off
    return Course(
        yard=key[0],
        part=key[1],
        out=tuple(map(int, out)),
        home=tuple(map(int, home)),
        full=tuple(map(int, full)),
    )


def own_stock(problem):
    """(yard, part) -> pieces the yard's own store has by each week."""
    shed = problem.locations[0]
    own: dict = defaultdict(lambda: np.zeros(problem.periods))
    for row in problem.stock:
        if row.location != shed:
            own[row.location, row.part][row.period :] += row.quantity
    return dict(own)
