"""The fixed plan held against seasons: whether its trips and its loads are enough, and where they fail first.

Takes what the loads bring by week, the trips, and the wants of any seasons; gives a Check. A yard runs short when it
lacks a whole piece and more than a tenth of what it keeps of a kind of gear. Frames of one depth count together, drawn
or not.
"""

import math
from collections import defaultdict

import numpy as np

from planner.after.records import Check, FirstFull, FirstShort
from planner.plan.words import of_100, week_day

TENTH = 0.1
SHOWN = 6
TINY = 1e-6


def check(wants, own, brought, fulls, *, kind, names, yard_names, day):
    """`brought`: (yard, kind) -> net pieces there by each week; `fulls`: each season's first trip that is too small;
    `kind`: part -> its kind; `names`: kind -> words."""
    kept, had = _by_kind(wants, "kept", kind), _by_kind(wants, "found", kind)
    for (yard, part), pieces in own.items():
        had[yard, kind(part)] = had.get((yard, kind(part)), 0) + pieces
    first = np.full(len(wants.weights), wants.periods)
    where: list = [None] * len(wants.weights)
    lacking = wanted = 0.0
    for key in sorted(kept):
        rows = kept[key]
        missing = np.maximum(rows - had.get(key, 0) - brought.get(key, 0), 0)
        lacking += float(wants.weights @ missing.sum(axis=1))
        wanted += float(wants.weights @ rows.sum(axis=1))
        short = missing >= np.maximum(1 - TINY, TENTH * rows)
        for number in np.flatnonzero(short.any(axis=1)):
            week = int(np.argmax(short[number]))
            if week < first[number]:
                first[number] = week
                where[number] = (key, float(missing[number, week]))
    roomy = np.array([found is None for found in fulls])
    return Check(
        seasons=len(wants.weights),
        enough_in_100=of_100(float(wants.weights[roomy].sum())),
        as_loaded_in_100=of_100(float(wants.weights[first >= wants.periods].sum())),
        on_time_share=1 - lacking / wanted if wanted else 1.0,
        full=_first_fulls(wants, fulls, yard_names, day),
        short=_first_shorts(wants, first, where, names, yard_names, day),
    )


def _by_kind(wants, table, kind):
    found: dict = {}
    for (yard, part), rows in getattr(wants, table).items():
        found[yard, kind(part)] = found.get((yard, kind(part)), 0) + rows
    return found


def _first_shorts(wants, first, where, names, yard_names, day):
    hits: dict = defaultdict(list)
    for number, found in enumerate(where):
        if found is not None:
            key, missing = found
            hits[(*key, int(first[number]))].append((wants.weights[number], missing))
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


def _first_fulls(wants, fulls, yard_names, day):
    hits: dict = defaultdict(list)
    for number, found in enumerate(fulls):
        if found is not None:
            yard, what, week, trips = found
            hits[yard, what, week].append((wants.weights[number], trips))
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
