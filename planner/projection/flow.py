"""Nectar: what a colony of each strength gains in each flow, and which super goes on when.

Takes living colonies by class and week and a scenario's factors; gives super needs by the fill rule, rounded to the
visit before, on until pulled at the visit after the flow and extracted.
"""

from bisect import bisect_left
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from planner.projection.growth import modelled_share
from planner.projection.records import SuperNeed
from planner.projection.supers_on import supers_on
from planner.season.calendar import Piece, circuit_of, is_ahead, piece_of

# What a colony gathers beside a full one, and how much it catches up by the tenth week after the first look:
# judgement; Farrar found that large colonies gather more than in proportion.
SHARE_OF_FULL = {"strong": 1.0, "fair": 0.75, "weak": 0.4, "split": 0.25}
CATCH_UP = {"strong": 0.0, "fair": 0.15, "weak": 0.2, "split": 0.4}
CATCH_UP_WEEKS = 10

# A super that would take less is not worth carrying out for one visit: judgement.
LEAST_HONEY_LB = 4.0
# Pulled in mid-flow only where the super comes back at least so many weeks earlier: judgement.
LEAST_WEEKS_GAINED = 2


@dataclass(frozen=True, kw_only=True, slots=True)
class FlowClass:
    """Colonies alike for the flow: `born` is the week from which they catch up."""

    yard: str
    strength: str
    width: int
    colonies: tuple[int, ...]
    born: int


def share_of_full(strength, weeks_on, growth="usual"):
    """Of a full colony's gain, what one of this strength gathers so many weeks into its build-up."""
    if growth == "model":
        shares = np.array([modelled_share(strength, int(week)) for week in np.atleast_1d(weeks_on)])
        return np.where(np.atleast_1d(weeks_on) < 0, 0.0, shares) if strength == "split" else shares
    ramp = np.clip(np.asarray(weeks_on) / CATCH_UP_WEEKS, 0, 1)
    share = SHARE_OF_FULL[strength] + CATCH_UP[strength] * ramp
    return np.where(np.asarray(weeks_on) < 0, 0.0, share) if strength == "split" else share


def weekly_gain(piece, gain_lb):
    """A full colony's gain by week of the window: rising to the middle and falling, the weeks gone cut off."""
    middle = (piece.of_weeks - 1) / 2
    week = np.arange(piece.of_weeks)
    weight = 1.0 + 1.0 - np.abs(week - middle) / max(1.0, middle + 0.5)
    weight /= weight.sum()
    end = piece.gone_weeks + piece.last - piece.first + 1
    return gain_lb * weight[piece.gone_weeks : end]


def class_gain(flow_class, piece, gain_lb, growth="usual"):
    """Cumulative lb of one colony of the class by week of the piece: never falling."""
    return [gain_lb * share for share in _course(flow_class.strength, flow_class.born, piece, growth)]


@lru_cache(maxsize=4096)
def _course(strength, born, piece, growth):
    """The same for one lb of a full colony's gain."""
    weeks = np.arange(piece.first, piece.last + 1)
    return tuple(np.cumsum(weekly_gain(piece, 1.0) * share_of_full(strength, weeks - born, growth)).tolist())


def super_needs(operation, assumptions, classes, scenario):
    """All supers wanted, the crop if they are all there, and each class's lb a colony over the year."""
    needs, crop, by_class = [], 0.0, {}
    yards = operation.yards_by_code
    on_hives = supers_on(operation, assumptions)
    for flow_class in classes:
        yard = yards[flow_class.yard]
        on_now = on_hives.get((flow_class.yard, flow_class.strength, flow_class.width), 0.0)
        total = 0.0
        for window in yard.windows:
            piece = piece_of(assumptions.start, assumptions.weeks, window)
            count = flow_class.colonies[piece.last]
            if count <= 0 or not is_ahead(assumptions, piece.first):
                continue
            factor = scenario.flow[yard.code, window.name]
            gained = class_gain(flow_class, piece, window.gain_lb * factor, assumptions.growth)
            stored = _stored(assumptions, flow_class, piece, window.gain_lb * factor, on_now)
            total += gained[-1]
            gained = [stored + lb for lb in gained]
            found = _supers(assumptions, yard, window, piece, flow_class, count, gained)
            needs.extend(found)
            crop += max(0.0, sum(need.honey_lb * need.colonies for need in found) - stored * count)
        by_class[flow_class.yard, flow_class.strength] = total
    return tuple(needs), crop, by_class


def _stored(assumptions, flow_class, piece, gain_lb, on_now):
    """Honey a colony has in the supers that are on it, where the season is under way and the flow is on: they stay on
    until they are pulled with the rest."""
    if not on_now or not piece.gone_weeks or not assumptions.began_before:
        return 0.0
    gone = Piece(first=-piece.gone_weeks, last=-1, gone_weeks=0, of_weeks=piece.of_weeks)
    so_far = class_gain(flow_class, gone, gain_lb, assumptions.growth)[-1]
    return min(so_far, on_now * assumptions.honey_per_super_lb * super_share(flow_class.width))


def _supers(assumptions, yard, window, piece, flow_class, count, gained):
    circuit = circuit_of(yard, assumptions)
    room = assumptions.honey_per_super_lb * super_share(flow_class.width)
    pulled = circuit.after(piece.last + 1)
    last = min(assumptions.weeks - 1, max(piece.last, pulled + assumptions.weeks_to_extract - 1))
    needs: list = []
    number = 0
    while True:
        honey = min(room, gained[-1] - room * number)
        if honey < LEAST_HONEY_LB:
            return needs
        wanted = 0 if number == 0 else bisect_left(gained, room * (number - 1 + assumptions.fill_share))
        needs.append(
            SuperNeed(
                yard=yard.code,
                window=window.name,
                strength=flow_class.strength,
                width=flow_class.width,
                number=number + 1,
                first=circuit.before(piece.first + wanted),
                last=last,
                colonies=count,
                honey_lb=honey,
                early_last=_early_last(assumptions, circuit, piece, gained, room, number, last),
            )
        )
        number += 1


def _early_last(assumptions, circuit, piece, gained, room, number, last):
    """The week in which it is extracted if pulled at the first visit that finds it full, where that gains enough."""
    filled = room * (number + 1)
    if not assumptions.pull_early or gained[-1] < filled:
        return None
    pulled = circuit.after(piece.first + bisect_left(gained, filled))
    early = max(pulled, pulled + assumptions.weeks_to_extract - 1)
    return early if early + LEAST_WEEKS_GAINED <= last else None


def super_share(width):
    """Honey of a super beside a ten-frame one."""
    return width / 10
