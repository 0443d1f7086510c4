"""When recipes have to run: the few periods in which their runs are told apart, in one scenario.

Takes recipes and the gear that comes and goes without them; gives spans (first, last) of periods by recipe, and the
windows in which shared work must fit. Exact, by two arguments:

Waiting. A recipe whose runs are worth no less later may wait for its next due period: the next in which something it
makes goes, or may be taken by another recipe that is due (after the last one, only a run that pays by itself is worth
anything, in the last period of all). Nothing goes of what it makes before, and what it takes lies there longer.

Sharing. Recipes that share minutes may not put off work at will. Periods are cut into segments so that what they take
comes at a segment's first period only; each segment's end is a due period too. Runs are counted at their due period
and may be done any time from the segment's first on: in order of due periods, those due alike by equal share, they fit
if for each due period the work due by it fits, and what they take is there, as it only goes from then on.
"""

from dataclasses import dataclass


@dataclass(frozen=True, kw_only=True)
class Calendar:
    """`spans`: recipe code -> (first, last) of its runs; `windows`: (first, last) in which work must fit."""

    spans: dict
    windows: tuple


def calendar(draft, gear, loaded=()):
    """The calendar of a scenario's recipes; `loaded` are periods in which work falls that cannot be moved."""
    problem = draft.problem
    touched = {part for pace in draft.paces for part in pace.takes | pace.makes}
    due = _Due(problem, draft.paces, *_moves(gear, touched))
    due.settle()
    spans: dict = {}
    windows = dict.fromkeys((period, period) for period in loaded)
    for pace in due.paces:
        code, found = pace.recipe.code, sorted(due.periods[pace.recipe.code])
        if pace.shares:
            spans[code] = [(due.first_of[period], period) for period in found]
        else:
            spans[code] = [(period, period) for period in found]
        if pace.recipe.work_minutes:
            windows.update(dict.fromkeys(spans[code]))
    return Calendar(spans=spans, windows=tuple(sorted(windows)))


def _moves(gear, touched):
    """part -> periods in which it comes and in which it goes, by anything but recipes."""
    comes: dict[str, set] = {part: set() for part in touched}
    goes: dict[str, set] = {part: set() for part in touched}
    for source in (gear.columns, gear.fixed):
        for (_, part), rows in source.items():
            if part in touched:
                comes[part].update([row[0] for row in rows if row[-1] > 0])
                goes[part].update([row[0] for row in rows if row[-1] < 0])
    return comes, goes


class _Due:
    """Due periods of all recipes, grown until each has those the others' ask for."""

    def __init__(self, problem, paces, comes, goes):
        self.end, self.hauled = problem.periods - 1, bool(problem.hauls)
        self.paces, self.comes, self.goes = paces, comes, goes
        self.periods = {pace.recipe.code: set(pace.pinned) for pace in paces}
        self.first_of: list = []

    def settle(self):
        before = -1
        while (size := sum(map(len, self.periods.values()))) != before:
            before = size
            ends = self._segments()
            goes = self._goes()
            for pace in self.paces:
                self._grow(pace, goes, ends)

    def _grow(self, pace, goes, ends):
        lead, periods = pace.recipe.lead_periods, self.periods[pace.recipe.code]
        for part in pace.makes:
            periods.update([period - lead for period in goes[part] if period >= lead])
        if pace.pays:
            periods.add(self.end - lead)
        if pace.shares and periods:
            last = max(periods)
            periods.update(end for end in ends if end < last)

    def _goes(self):
        goes = {part: set(found) for part, found in self.goes.items()}
        for pace in self.paces:
            for part in pace.takes:
                goes[part].update(self.periods[pace.recipe.code])
        return goes

    def _segments(self):
        """Last periods of segments; notes the first period of each period's segment."""
        sharing = [pace for pace in self.paces if pace.shares]
        taken = {part for pace in sharing for part in pace.takes}
        firsts: set[int] = set()
        for part in taken:
            firsts |= self.comes[part]
        for pace in self.paces:
            if not pace.shares and taken & pace.makes:
                lead = pace.recipe.lead_periods
                firsts.update(period + lead for period in self.periods[pace.recipe.code])
        if not all(pace.steady for pace in sharing) or self.hauled:
            firsts.update(range(self.end + 1))
        self.first_of, first = [], 0
        for period in range(self.end + 1):
            first = period if period in firsts else first
            self.first_of.append(first)
        return sorted({first - 1 for first in firsts if first})
