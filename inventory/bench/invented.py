"""Invented years of a large outfit's acts, to measure with: loads, whole-yard supering, purchases, wear, mistakes.

Takes the ids of places and parts, how many movements and a seed; gives acts in the order of their days, never taking
what is not there. The same seed gives the same. Writes nothing.
"""

import datetime as dt
import random
from dataclasses import dataclass

SHARE_BY_MONTH = (1, 1, 2, 6, 10, 10, 8, 8, 5, 3, 1, 1)
OPENING_SHARE = 0.4  # of few movements at most so many tell what was there at first
ON_A_COLONY = 7  # kinds of gear on it at first
STANDS_ON_BEES = 12  # kinds that are ever put on a colony
KEPT_IN_A_YARD = 25  # kinds of gear in its store
REVERSED = 0.01  # of acts
SOUND, TO_MEND = "sound", "to mend"


@dataclass(frozen=True, kw_only=True)
class Ground:
    """Ids of locations: the shed's, yards' stores with those of their colonies, outside ends by name; ids of parts."""

    shed: int
    yards: dict[int, tuple[int, ...]]
    outside: dict[str, int]
    parts: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class InventedAct:
    """Rows are (part, condition, pieces, from, to, reason); `reverses` counts back to the act put right, 0 for none."""

    day: dt.date
    name: str
    rows: list
    reverses: int = 0


class Years:
    """Balances as they go, and what may happen next."""

    def __init__(self, ground, *, seed):
        self.ground, self.random = ground, random.Random(seed)
        self.on_bees = set(ground.parts[:STANDS_ON_BEES])
        self.held: dict[int, dict[tuple, int]] = {}
        self.stores, self.outside = [ground.shed, *ground.yards], set(ground.outside.values())

    def acts(self, movements, *, first, last):
        """Acts of so many movements from the first day to the last, more of them in the season."""
        opening = list(self._opening(first, int(OPENING_SHARE * movements)))
        yield from opening
        left = movements - sum(len(act.rows) for act in opening)
        for day, count in _spread(left, first + dt.timedelta(days=1), last):
            while count > 0:
                act = self._any(day, count)
                count -= len(act.rows)
                yield act
                if len(act.rows) <= count and self.random.random() < REVERSED:
                    count -= len(act.rows)
                    yield self._back(act)

    def _opening(self, day, most):
        came = self.ground.outside["correction"]
        places = [(self.ground.shed, len(self.ground.parts), 5000)]
        for store, colonies in self.ground.yards.items():
            places.append((store, KEPT_IN_A_YARD, 60))
            places += [(colony, ON_A_COLONY, 12) for colony in colonies]
        for place, kinds, pieces in places:
            kinds = min(kinds, most, len(self.ground.parts))
            if kinds == 0:
                return
            most -= kinds
            parts = self.ground.parts if place in self.stores else self.ground.parts[:STANDS_ON_BEES]
            parts = parts[:kinds] if place == self.ground.shed else self.random.sample(parts, kinds)
            lines = [(part, SOUND, self.random.randint(1, pieces)) for part in parts]
            yield self._act(day, "open stock", lines, came, place, "opening stock")

    def _any(self, day, most):
        kinds = (
            self._load,
            self._load,
            self._super,
            self._super,
            self._super,
            self._pull,
            self._buy,
            self._wear,
        )
        act = self.random.choice(kinds)(day, min(most, 30))
        return act if act is not None and act.rows else self._buy(day, min(most, 8))

    def _load(self, day, most):
        here, there = self.random.sample(self.stores, 2)
        lines = self._some(here, self.random.randint(1, min(12, most)), 20)
        return self._act(day, "move", lines, here, there, "moved")

    def _super(self, day, most):
        """A whole yard at once: a piece or two from its store onto colonies."""
        store, colonies = self.random.choice(list(self.ground.yards.items()))
        lines, rows = [line for line in self._some(store, 12, 1) if line[0] in self.on_bees][:most], []
        for colony in self._standing(colonies, most // max(1, len(lines))):
            for part, condition, _ in lines:
                if self.held.get(store, {}).get((part, condition), 0) > 0:
                    rows += self._act(
                        day, "", [(part, condition, 1)], store, colony, "placed on a colony"
                    ).rows
        return InventedAct(day, "place", rows)

    def _pull(self, day, most):
        store, colonies = self.random.choice(list(self.ground.yards.items()))
        rows = []
        for colony in self._standing(colonies, most):
            lines = self._some(colony, 1, 3)
            rows += self._act(day, "", lines, colony, store, "taken off a colony").rows
        return InventedAct(day, "take off", rows)

    def _standing(self, colonies, most):
        return self.random.sample(colonies, min(len(colonies), most)) if colonies else []

    def _buy(self, day, most):
        parts = self.random.sample(self.ground.parts, min(most, 8, len(self.ground.parts)))
        lines = [(part, SOUND, self.random.randint(5, 60)) for part in parts]
        return self._act(
            day, "open stock", lines, self.ground.outside["correction"], self.ground.shed, "opening stock"
        )

    def _wear(self, day, most):
        """Some gear set aside to be mended: over the workbench, as a changed condition goes."""
        store, bench = self.random.choice(self.stores), self.ground.outside["bench"]
        sound = [line for line in self._some(store, 2, 4) if line[1] == SOUND]
        if most < 2 * len(sound):
            return None
        there = self._act(day, "mark", sound, store, bench, "broken")
        mended = [(part, TO_MEND, pieces) for part, _, pieces in sound]
        back = self._act(day, "mark", mended, bench, store, "broken")
        return InventedAct(day, "mark", there.rows + back.rows)

    def _back(self, act):
        rows = [(part, was, pieces, there, here, why) for part, was, pieces, here, there, why in act.rows]
        for part, condition, pieces, here, there, _ in rows:
            self._carry(part, condition, pieces, here, there)
        return InventedAct(act.day, "reverse", rows, 1)

    def _some(self, place, kinds, most):
        """Lines of what lies there, some kinds of it."""
        there = list(self.held.get(place, {}).items())
        chosen = self.random.sample(there, min(kinds, len(there)))
        return [(part, how, self.random.randint(1, min(most, pieces))) for (part, how), pieces in chosen]

    def _act(self, day, name, lines, here, there, reason):
        for part, condition, pieces in lines:
            self._carry(part, condition, pieces, here, there)
        return InventedAct(
            day, name, [(part, how, pieces, here, there, reason) for part, how, pieces in lines]
        )

    def _carry(self, part, condition, pieces, here, there):
        key = (part, condition)
        for place, change in ((here, -pieces), (there, pieces)):
            if place not in self.outside:
                gears = self.held.setdefault(place, {})
                gears[key] = gears.get(key, 0) + change
                if not gears[key]:
                    del gears[key]


def _spread(movements, first, last):
    """(day, movements) of every day, by the month's share."""
    days = [first + dt.timedelta(days=number) for number in range((last - first).days + 1)]
    shares = [SHARE_BY_MONTH[day.month - 1] for day in days]
    whole, done, so_far = sum(shares), 0, 0
    for day, share in zip(days, shares, strict=True):
        so_far += share
        due = movements * so_far // whole
        yield day, due - done
        done = due
