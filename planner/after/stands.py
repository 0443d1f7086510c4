"""Yards that some season fills beyond their stands. Takes the operation and projections; gives rows for those only."""

import numpy as np

from planner.after.records import StandRow
from planner.plan.words import of_100, week_day

HIGH = 0.9


def stand_rows(operation, projections):
    """One row a yard where hives (nucs beside their mother not counted) outnumber the stands in some season."""
    weights = np.array([projection.probability for projection in projections])
    rows = []
    for yard in operation.yards:
        if yard.code == operation.shed:
            continue
        counts = np.array([_by_week(projection, yard.code) for projection in projections])
        over = (counts > yard.stands).any(axis=1)
        if not over.any():
            continue
        most = np.quantile(counts, HIGH, axis=0, method="higher")
        week = int(np.argmax(most if most.max() > yard.stands else counts.max(axis=0)))
        rows.append(
            StandRow(
                yard=yard.code,
                yard_name=yard.name,
                stands=yard.stands,
                colonies=int(max(most[week], counts[:, week].max() if most[week] <= yard.stands else 0)),
                week=week,
                day=week_day(operation.day, week),
                in_100=of_100(float(weights[over].sum() / weights.sum())),
            )
        )
    return tuple(rows)


def _by_week(projection, yard):
    found = [counts for (at, _strength), counts in projection.colonies.items() if at == yard]
    weeks = len(next(iter(projection.colonies.values()), ()))
    return np.sum(found, axis=0) if found else np.zeros(weeks, dtype=int)
