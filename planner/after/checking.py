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
        full=tuple(
            FirstFull(what=what, trips=math.ceil(trips - TINY), **about)
            for about, what, trips in _firsts(weights, fulls, yard_names, day, str)
        ),
        short=tuple(
            FirstShort(name=name, missing=max(1, round(missing)), **about)
            for about, name, missing in _firsts(weights, lived.waits, yard_names, day, names)
        ),
    )


def _in_100(weights, good):
    return of_100(float(weights[good].sum()))


def _firsts(weights, found, yard_names, day, words):
    """[(what it is about, its words, mean amount)] of each season's first failure, the likeliest first."""
    hits: dict = defaultdict(list)
    for weight, hit in zip(weights, found, strict=True):
        if hit is not None:
            yard, what, week, amount = hit
            hits[yard_names.get(yard, yard), words(what), week].append((weight, amount))
    rows = []
    for (yard_name, what, week), seen in hits.items():
        chance = sum(weight for weight, _amount in seen)
        about = {"yard_name": yard_name, "week": week, "day": week_day(day, week), "in_100": of_100(chance)}
        rows.append((about, what, sum(weight * amount for weight, amount in seen) / chance))
    rows.sort(key=lambda row: (-row[0]["in_100"], row[0]["week"], row[0]["yard_name"], row[1]))
    return rows[:SHOWN]
