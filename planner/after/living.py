"""Seasons lived through with the plan: its loads, and on each later visit that is due what the yard was seen to lack.

Takes the wants of seasons, the gear there is and what the planned loads keep at each yard; gives what was late, where a
yard waited longer than its next visit, and what rode out. Nobody knows what comes: a lack is seen on one visit and
answered on the next, from the shed, with what lay idle at other yards brought home for it. Gear a season puts to another
use that waits is not idle: which of two like uses has the last piece is no matter of hauling.
"""

from collections import defaultdict
from dataclasses import dataclass

import numpy as np

from planner.after.targets import STAYS_WEEKS
from planner.after.wants import TABLES

TENTH = 0.1  # a yard is short when it lacks a whole piece and more than a tenth of what it keeps of a kind: judgement
TINY = 1e-6


@dataclass(frozen=True, kw_only=True)
class Lived:
    """By season: pieces wanted and late, whether all was in time, the first longer wait: (yard, kind, week, pieces)."""

    wanted: np.ndarray
    late: np.ndarray
    prompt: np.ndarray
    waits: list
    out: dict  # (yard, kind) -> pieces brought (season × week)


def live(wants, own, pool, brought, *, kind, trips, extract_weeks):
    """`pool`: kind -> pieces there are; `brought`: (yard, kind) -> net pieces the loads keep there; `trips`: yard -> weeks."""
    tables = {name: _by_kind(wants, name, kind) for name in TABLES}
    for (yard, part), rows in own.items():
        tables["found"][yard, kind(part)] += rows
    yards = sorted(trips)
    seasons = len(wants.weights)
    lived = Lived(
        wanted=np.zeros(seasons),
        late=np.zeros(seasons),
        prompt=np.full(seasons, True),
        waits=[None] * seasons,
        out={},
    )
    due = np.array([[week in trips[yard] for week in range(wants.periods)] for yard in yards])
    for code in sorted({part for _yard, part in tables["kept"]}):
        rows = {name: np.array([table[yard, code] for yard in yards]) for name, table in tables.items()}
        base = np.array([brought.get((yard, code), np.zeros(wants.periods)) for yard in yards])
        round_ = _Rounds(rows, base, due, pool.get(code, 0.0), extract_weeks)
        for week in range(wants.periods):
            round_.week(week)
            _note(lived, round_, code, week, yards)
        lived.wanted[:] += np.maximum(np.diff(rows["kept"], axis=2, prepend=0), 0).sum(axis=(0, 2))
        lived.late[:] += round_.late
        lived.out.update({(yard, code): round_.out[at] for at, yard in enumerate(yards)})
    return lived


def _by_kind(wants, table, kind):
    found: dict = defaultdict(lambda: np.zeros((len(wants.weights), wants.periods)))
    for (yard, part), rows in getattr(wants, table).items():
        found[yard, kind(part)] += rows
    return found


def _note(lived, rounds, code, week, yards):
    """Keeps each season's first longer wait."""
    lived.prompt[:] &= ~rounds.is_short(rounds.waiting, week).any(axis=0)
    short = rounds.is_short(rounds.too_long, week)
    for season in np.flatnonzero(short.any(axis=0)):
        if lived.waits[season] is None or week < lived.waits[season][2]:
            at = int(np.argmax(short[:, season]))
            lived.waits[season] = yards[at], code, week, float(rounds.too_long[at, season])


class _Rounds:
    """One kind of gear, week after week. Arrays are yard × season; what is held is net of what was there already."""

    def __init__(self, rows, base, due, pool, extract_weeks):
        self.kept, self.pulled = rows["kept"], rows["pulled"]
        self.need = rows["kept"] - rows["found"]
        self.more = np.maximum(rows["asked"] - rows["kept"], 0)  # uses that would take a piece too
        self.base, self.due, self.extracting = base, due, max(1, extract_weeks)
        self.supply = pool - rows["found"].sum(axis=0)
        shape = self.need.shape
        self.held, self.seen, self.lack, self.idle, self.instead = (np.zeros(shape[:2]) for _ in range(5))
        self.away = np.zeros((shape[1], shape[2] + self.extracting))
        self.out = np.zeros(shape)
        self.late, self.lacking = np.zeros(shape[1]), np.zeros(shape[1])
        self.waiting = self.too_long = np.zeros(shape[:2])

    def week(self, week):
        need = self.need[:, :, week]
        due = self.due[:, week, None]
        self._pull(week)
        shed = self._take_home(week, need, due)
        known = np.where(due, np.maximum(np.minimum(self.seen, need) - self.held, 0), 0)
        shed = self._bring(week, known, shed)
        shed = self._bring(week, np.where(due, np.maximum(self.base[:, week, None] - self.held, 0), 0), shed)
        self._look(week, need, due, shed)

    def is_short(self, pieces, week):
        return pieces >= np.maximum(1, TENTH * self.kept[:, :, week]) - TINY

    def _pull(self, week):
        """Full supers leave; one that never came does not."""
        off = np.maximum(self.pulled[:, :, week] - self.lack, 0)
        self.held -= off
        self.seen -= self.pulled[:, :, week]
        self.away[:, week : week + self.extracting] += off.sum(axis=0)[:, None]

    def _take_home(self, week, need, due):
        """What the yard's plan has no use for in some weeks comes home; gives what the shed has before it does."""
        soon = self.base[:, week : week + STAYS_WEEKS + 1].max(axis=1)[:, None]
        spare = np.where(due, np.maximum(self.held - np.maximum(soon, need), 0), 0)
        shed = self.supply[:, week] - self.held.sum(axis=0) - self.away[:, week]
        self.held -= spare
        return np.maximum(shed, 0)

    def _bring(self, week, wanted, shed):
        """Gives each yard what it is to have, or its share of what the shed has; gives what stays there."""
        total = wanted.sum(axis=0)
        given = wanted * np.minimum(1, shed / np.maximum(total, TINY))
        self.held += given
        self.out[:, :, week] += given
        return shed - given.sum(axis=0)

    def _look(self, week, need, due, shed):
        """What each visited yard lacks, has too much of, and has waited for too long while a piece lay idle."""
        too_long = np.where(due, np.maximum(np.minimum(self.seen, need) - self.held, 0), 0)
        surplus = np.where(due, np.maximum(self.held - need, 0), 0)
        lain = np.where(due, np.minimum(self.idle, surplus), self.idle).sum(axis=0)
        self.lack = np.where(due, np.maximum(need - self.held, 0), self.lack)
        self.instead = np.where(due, np.minimum(surplus, self.more[:, :, week]), self.instead)
        self.idle = np.where(due, surplus - self.instead, self.idle)
        instead, lack = self.instead.sum(axis=0), self.lack.sum(axis=0)
        lacking = np.maximum(lack - instead, 0)
        self.late += np.maximum(lacking - self.lacking, 0)
        self.lacking = lacking
        self.waiting = self.lack * lacking / np.maximum(lack, TINY)
        waited = too_long.sum(axis=0)
        idly = np.minimum(np.maximum(waited - instead, 0), lain + shed)
        self.too_long = too_long * idly / np.maximum(waited, TINY)
        self.seen = np.where(due, need, self.seen)
        free = np.where(due, self.idle, 0)
        asked = np.maximum(lack - shed, 0)
        taken = free * np.minimum(1, asked / np.maximum(free.sum(axis=0), TINY))
        self.held -= taken
        self.idle = self.idle - taken
