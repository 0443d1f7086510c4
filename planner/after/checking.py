"""The plan held against seasons: whether its trips carry all, what is in time, and where it fails first.

Takes seasons as they were lived through and each one's first trip too few; gives a Check. A hauling plan is enough for a
season when its trips carry all the season asks for and no yard waits longer than its next visit.
"""

import math
from collections import defaultdict

import numpy as np

from planner.after.records import Check, FirstFull, FirstShort
from planner.plan.words import of_100, week_day

SHOWN = 6
TINY = 1e-6


def check(weights, lived, fulls, *, names, yard_names, day):
    """`lived`: living.Lived; `fulls`: each season's first trip too few or None; `names`: kind -> words."""
    roomy = np.array([found is None for found in fulls])
    in_turn = np.array([found is None for found in lived.waits])
    wanted = float(weights @ lived.wanted)
    return Check(
        seasons=len(weights),
        enough_in_100=_in_100(weights, roomy & in_turn),
        as_loaded_in_100=_in_100(weights, lived.prompt),
        on_time_share=1 - float(weights @ lived.late) / wanted if wanted else 1.0,
        trips_in_100=_in_100(weights, roomy),
        in_turn_in_100=_in_100(weights, in_turn),
        full=_first_fulls(weights, fulls, yard_names, day),
        short=_first_shorts(weights, lived.waits, names, yard_names, day),
    )


def _in_100(weights, good):
    return of_100(float(weights[good].sum()))


def _first_shorts(weights, waits, names, yard_names, day):
    hits: dict = defaultdict(list)
    for weight, found in zip(weights, waits, strict=True):
        if found is not None:
            yard, kind, week, pieces = found
            hits[yard, kind, week].append((weight, pieces))
    rows = [
        FirstShort(
            yard_name=yard_names.get(yard, yard),
            name=names(part),
            week=week,
            day=week_day(day, week),
            in_100=of_100(sum(weight for weight, _missing in seen)),
            missing=max(1, round(sum(w * m for w, m in seen) / sum(w for w, _m in seen))),
        )
        for (yard, part, week), seen in hits.items()
    ]
    rows.sort(key=lambda row: (-row.in_100, row.week, row.yard_name, row.name))
    return tuple(rows[:SHOWN])


def _first_fulls(weights, fulls, yard_names, day):
    hits: dict = defaultdict(list)
    for weight, found in zip(weights, fulls, strict=True):
        if found is not None:
            yard, what, week, trips = found
            hits[yard, what, week].append((weight, trips))
    rows = [
        FirstFull(
            yard_name=yard_names.get(yard, yard),
            what=what,
            week=week,
            day=week_day(day, week),
            in_100=of_100(sum(weight for weight, _trips in seen)),
            trips=math.ceil(sum(w * n for w, n in seen) / sum(w for w, _n in seen) - TINY),
        )
        for (yard, what, week), seen in hits.items()
    ]
    rows.sort(key=lambda row: (-row.in_100, row.week, row.yard_name, row.what))
    return tuple(rows[:SHOWN])
