"""Increase: as many splits as the target asks after the winter, no more than strength and stands allow.

Decided knowing what survived and not the flow to come. Takes standings; gives one record a yard that splits.
"""

import math
from dataclasses import replace

from planner.projection.colonies import allot, round_half_up
from planner.projection.records import Splits
from planner.season.calendar import circuit_of, due_period, turns_of

LATE_WEEKS = 4  # splits not made in their week are still made so many weeks later: judgement


def splits(operation, assumptions, standings, scenario):
    """Nucs for sale come first out of what is made; the rest finds a stand, in its own yard where there is one."""
    yards = [yard for yard in operation.yards if yard.code != operation.shed]
    week = due_period(assumptions, assumptions.split_week, late_weeks=LATE_WEEKS)
    to_sell = nucs_to_sell(operation, assumptions)
    alive = {yard.code: 0 for yard in yards}
    strength_limit = dict(alive)
    for standing in standings:
        count = standing.at(week)
        alive[standing.yard] = alive.get(standing.yard, 0) + count
        limit = count * assumptions.splits_of(standing.strength)
        strength_limit[standing.yard] = strength_limit.get(standing.yard, 0) + limit
    free = {yard.code: max(0, yard.stands - alive[yard.code]) for yard in yards}
    attempts = _attempts(operation, assumptions, week, alive, strength_limit, free)
    if not attempts:
        return ()
    by_yard = allot(attempts, [strength_limit[yard.code] for yard in yards])
    total_made = min(math.floor(attempts * scenario.split_success + 0.5), sum(free.values()) + to_sell)
    made = allot(total_made, by_yard)
    sold = allot(min(to_sell, total_made), made)
    settled = _settled(yards, assumptions, week, list(zip(by_yard, made, sold, strict=True)), free)
    return tuple(_wintered(operation, assumptions, split, scenario) for split in settled)


def _wintered(operation, assumptions, split, scenario):
    """The same with those that die where a winter follows within the year; found like the others' deadouts."""
    winter = turns_of(assumptions).winter
    if winter <= split.hive_week:
        return split
    yards = operation.yards_by_code
    dead = {
        code: round_half_up(count * (1 - scenario.winter_share.get(code, 1.0)))
        for code, count in split.homes.items()
    }
    found = max(circuit_of(yards[code], assumptions).after(winter) for code in (split.yard, *split.homes))
    return replace(split, dead={code: count for code, count in dead.items() if count}, found_week=found)


def _attempts(operation, assumptions, week, alive, strength_limit, free):
    target = assumptions.target_colonies
    if target is None:
        target = operation.so_far.colonies_begun
    if target is None:
        target = sum(group.colonies for group in operation.colonies)
    wanted = max(0, target - _still_there(assumptions, sum(alive.values()), week))
    wanted = min(wanted, sum(free.values())) + nucs_to_sell(operation, assumptions)
    if wanted <= 0 or assumptions.split_success <= 0:
        return 0
    most = sum(strength_limit.values())
    return math.ceil(min(most, wanted / assumptions.split_success - 1e-9))


def nucs_to_sell(operation, assumptions):
    """Nucs wanted for sale that are not sold yet."""
    return max(0, assumptions.nucs_sold - operation.so_far.nucs_sold)


def _still_there(assumptions, alive, week):
    """Of those alive at the split, what the keeper must expect to have in autumn: the summer takes its share."""
    turns = turns_of(assumptions)
    lost = 0.0 if turns.summer < week <= turns.autumn else assumptions.summer_loss_share
    return math.floor(alive * (1 - lost) + 0.5)


def _settled(yards, assumptions, week, tallies, free):
    left = dict(free)
    kept = [made - sold for _attempts_, made, sold in tallies]
    own = []
    for yard, count in zip(yards, kept, strict=True):
        home = min(count, left[yard.code])
        left[yard.code] -= home
        own.append(home)
    records = []
    for yard, (attempts, made, sold), home in zip(yards, tallies, own, strict=True):
        if not attempts:
            continue
        homes = {yard.code: home} if home else {}
        away = made - sold - home
        for code in sorted(left, key=lambda code: (-left[code], code)):
            taken = min(away, left[code])
            if taken:
                homes[code] = homes.get(code, 0) + taken
                left[code] -= taken
                away -= taken
        circuit = circuit_of(yard, assumptions)
        start = circuit.before(week)
        hive = min(assumptions.weeks - 1, max(start + 1, circuit.before(start + assumptions.weeks_in_nuc)))
        records.append(
            Splits(
                yard=yard.code,
                week=start,
                hive_week=hive,
                attempts=attempts,
                made=made,
                sold=sold,
                homes=homes,
            )
        )
    return tuple(records)
