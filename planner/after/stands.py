"""Yards that some season fills beyond their stands. Takes the operation and projections; gives rows for those only."""

import numpy as np

from planner.after.records import StandRow
from planner.after.targets import MOST, at_level
from planner.plan.needs import chances
from planner.plan.words import of_100, week_day


def stand_rows(operation, projections):
    """One row a yard where hives (nucs beside their mother not counted) outnumber the stands in some season."""
    weights = chances(projections)
    rows = []
    for yard in operation.yards:
        if yard.code == operation.shed:
            continue
        counts = np.array([colonies_at(projection, yard.code) for projection in projections])
        over = (counts > yard.stands).any(axis=1)
        if not over.any():
            continue
        most = at_level(counts, weights, MOST)
        if most.max() <= yard.stands:  # only rarer seasons go beyond
            most = counts.max(axis=0)
        week = int(np.argmax(most))
        rows.append(
            StandRow(
                yard=yard.code,
                yard_name=yard.name,
                stands=yard.stands,
                colonies=int(most[week]),
                week=week,
                day=week_day(operation.day, week),
                in_100=of_100(float(weights[over].sum())),
            )
        )
    return tuple(rows)


def colonies_at(projection, yard):
    """Living colonies of the yard by week."""
    found = [counts for (at, _strength), counts in projection.colonies.items() if at == yard]
    weeks = len(next(iter(projection.colonies.values()), ()))
    return np.sum(found, axis=0) if found else np.zeros(weeks, dtype=int)
