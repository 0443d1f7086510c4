"""Uses of one scenario merged across yards: which share a column, and what that sharing may hide.

Takes a Problem and a scenario's number; gives Merging: groups of uses alike in weeks, gear and what they wait for,
whatever they are worth. A group is served by one column worth the mean: every use to the same share, a true plan.
What uses served each for itself might earn beyond it is told at any prices, and groups that hide it are parted.
"""

from dataclasses import dataclass

import numpy as np

EQUAL = 1e-9


@dataclass(frozen=True, kw_only=True)
class Group:
    """Uses served through one column; `on` is the number of the group they wait for."""

    uses: tuple
    units: tuple  # of each use, as many as what it waits for allows
    value: float
    on: int | None
    per: float  # units of all for each unit of the group they wait for
    is_waited_for: bool


def merging_of(problem, number):
    """The Merging of a scenario; None where nothing can be merged: gear lies at places, or uses are whole."""
    if problem.hauls or problem.whole_uses:
        return None
    found = list(_mergeable(problem.scenarios[number].uses))
    return Merging(found) if found else None


def _mergeable(uses):
    """(use, units, place of what it waits for or −1), tier by tier: families of uses none of which is a must and all
    of which can be served to one share."""
    waiting: dict[str, list] = {}
    for use in uses:
        if use.needs_use:
            waiting.setdefault(use.needs_use, []).append(use)
    count, tier = 0, list[tuple]()
    for root in uses:
        if root.needs_use is None and not root.must:
            family = _family(root, waiting) if root.code in waiting else (root, root.units, ())
            if family is not None:
                tier.append((family, -1))
    while tier:
        following: list[tuple] = []
        for (use, units, below), on in tier:
            yield use, units, on
            following.extend((child, count) for child in below)
            count += 1
        tier = following


def _family(use, waiting, units=None):
    """(use, units, families that wait for it), or None where a must or a limit of its own stands against one share."""
    units = use.units if units is None else units
    below = []
    for child in waiting.get(use.code, ()):
        most = child.per * units
        found = _family(child, waiting, min(most, child.units))
        if found is None or most > child.units + EQUAL * max(1.0, child.units):
            return None
        below.append(found)
    return None if use.must else (use, units, below)


class Merging:
    """Uses in tiers (first those that wait for none), and the group each is in.

    By group: `on` (the group it waits for or −1), `units`, `group_values`, `per`. Groups keep their numbers when parted.
    """

    def __init__(self, found):
        self.uses = [use for use, _, _ in found]
        self.units = np.array([units for _, units, _ in found])
        self.values = np.array([use.value for use in self.uses])
        self.above = np.array([above for _, _, above in found])
        self.tiers = _tiers(self.above)
        self.group = np.zeros(len(self.uses), dtype=int)
        self.group_tiers: list = [np.zeros(0, dtype=int) for _ in self.tiers]
        self.count = 0
        self._number(_kinds(self.uses), np.zeros(0, dtype=int))

    @property
    def codes(self):
        return {use.code for use in self.uses}

    def groups(self):
        """The groups in order of their numbers."""
        members: list[list[int]] = [[] for _ in range(self.count)]
        for place in np.argsort(-self.values, kind="stable").tolist():
            members[self.group[place]].append(place)
        waited_for = set(self.on.tolist())
        for number, places in enumerate(members):
            yield Group(
                uses=tuple(self.uses[place] for place in places),
                units=tuple(self.units[places].tolist()),
                value=float(self.group_values[number]),
                on=int(self.on[number]) if self.on[number] >= 0 else None,
                per=float(self.per[number]),
                is_waited_for=number in waited_for,
            )

    def by_tiers(self):
        """Numbers of all groups, what is waited for before what waits."""
        return np.concatenate(self.group_tiers).tolist()

    def loose(self, margins):
        """What uses served each for itself might earn more than groups, at prices that leave each group so much a
        unit."""
        first, last = self.tiers[0]
        most = np.maximum(self._earned(margins)[first:last], 0.0).sum()
        earned = self.group_units * margins
        for numbers in reversed(self.group_tiers[1:]):
            earned += np.bincount(self.on[numbers], np.maximum(earned[numbers], 0.0), minlength=self.count)
        return max(float(most - np.maximum(earned[self.group_tiers[0]], 0.0).sum()), 0.0)

    def part(self, margins, left):
        """Parts the groups that hide most into uses that pay at these prices and uses that do not, until no more than
        `left` is hidden. Gives the numbers of groups that changed, and of each new one the group it came from."""
        earned = self._earned(margins)
        hidden = self._by_group(np.maximum(earned, 0.0)) - np.maximum(self._by_group(earned), 0.0)
        order = np.argsort(-hidden, kind="stable")
        still = hidden.sum() - np.cumsum(hidden[order])
        parted = order[: 1 + int(np.searchsorted(-still, -left))]
        chosen = np.zeros(self.count, dtype=bool)
        chosen[parted] = hidden[parted] > 0
        before = self._told()
        origins = self._number(2 * self.group + (chosen[self.group] & (earned > 0)), self.group)
        old = len(before[0])
        changed = [was != now[:old] for was, now in zip(before, self._told(), strict=True)]
        return np.flatnonzero(np.any(changed, axis=0)).tolist(), origins

    def _told(self):
        return self.group_units, self.group_values, self.on, self.per

    def _earned(self, margins):
        """What each use with all that waits for it earns at most."""
        earned = self.units * (margins[self.group] + self.values - self.group_values[self.group])
        for first, last in reversed(self.tiers[1:]):
            waiting = np.maximum(earned[first:last], 0.0)
            earned += np.bincount(self.above[first:last], waiting, minlength=len(earned))
        return earned

    def _by_group(self, amounts):
        return np.bincount(self.group, amounts, minlength=self.count)

    def _number(self, kinds, was):
        """Groups of uses of one kind that wait for one group; the first of those that were one group (`was`) keeps its
        number. Gives the group each new one came from."""
        origins: list[int] = []
        width = int(kinds.max()) + 1
        for tier, (first, last) in enumerate(self.tiers):
            above = self.group[self.above[first:last]] if tier else 0
            _, at, place = np.unique(
                above * width + kinds[first:last], return_index=True, return_inverse=True
            )
            numbers, taken = np.zeros(len(at), dtype=int), set()
            for found, use in enumerate(at.tolist()):
                number = int(was[first + use]) if len(was) else -1
                if number < 0 or number in taken:
                    numbers[found] = self.count + len(origins)
                    origins.append(number)
                else:
                    numbers[found] = number
                    taken.add(number)
            self.group[first:last] = numbers[place]
            self.group_tiers[tier] = numbers
        self.count += len(origins)
        self._tell()
        return origins

    def _tell(self):
        self.on = np.full(self.count, -1)
        self.on[self.group] = np.where(self.above < 0, -1, self.group[self.above])
        self.group_units = units = self._by_group(self.units)
        plain = self._by_group(self.values) / self._by_group(np.ones(len(self.uses)))
        weighed = self._by_group(self.units * self.values) / np.where(units > 0, units, 1.0)
        self.group_values = np.where(units > 0, weighed, plain)
        above = np.where(self.on < 0, 1.0, units[self.on])
        self.per = np.where(self.on < 0, 0.0, units / np.where(above > 0, above, 1.0))


def _tiers(on):
    """(first, last) of each tier."""
    tiers, depth, first = list[tuple](), list[int](), 0
    for place, above in enumerate(on.tolist()):
        depth.append(0 if above < 0 else depth[above] + 1)
        if place and depth[place] > depth[place - 1]:
            tiers.append((first, place))
            first = place
    return [*tiers, (first, len(depth))]


def _kinds(uses):
    """A number for each use, the same for uses alike in weeks and gear."""
    numbers: dict[tuple, int] = {}
    kinds = [
        (use.first, use.last, frozenset(use.keeps.items()), frozenset(use.spends.items())) for use in uses
    ]
    return np.array([numbers.setdefault(kind, len(numbers)) for kind in kinds])
