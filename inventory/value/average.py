"""The moving average: what each piece that comes, is made or leaves is worth. Pure.

Takes events in the order of the books and what a piece costs where nothing else is known; gives a Posted a change.
A part is one pool of pieces and cents: what leaves takes its share of the cents, the last piece all that is left, so
pieces and cents always agree. Within a day what came counts before what was made, and both before what left.
"""

from collections import defaultdict
from itertools import groupby

from inventory.value.records import Came, Left, Made, Passed, Posted
from inventory.value.spread import part_of_whole, spread


def carry(events, prices):
    """Posted lines, day by day. `prices`: cents a piece of each part, for pieces that came when none was there."""
    book = _Book(prices)
    for _, day in groupby(sorted(events, key=lambda event: event.day), key=lambda event: event.day):
        book.evening(list(day))
    return tuple(book.posted)


class _Book:
    """The pools while the days are gone through."""

    def __init__(self, prices):
        self.prices = prices
        self.pools: dict[str, list[int]] = defaultdict(lambda: [0, 0])
        self.by_key: dict[tuple, int] = defaultdict(int)  # {(key, part): cents}, for who undoes it later
        self.posted: list[Posted] = []

    def evening(self, events):
        known: list[Came] = []
        at_average: list[Came] = []
        made: list[Made] = []
        gone: list[Left] = []
        back: list[Left] = []
        for event in events:
            if isinstance(event, Made):
                made.append(event)
            elif isinstance(event, Left):
                (back if event.undoes else gone).append(event)
            elif isinstance(event, Passed):
                self._pass(event)
            else:
                (at_average if event.cents is None and not event.undoes else known).append(event)
        for event in known + at_average:
            self._come(event)
        self._make(made)
        for event in back + gone:
            self._leave(event)

    def _post(self, event, part, pieces, cents, why):
        self.by_key[event.key, part] += cents
        undoes = getattr(event, "undoes", "")
        line = {"day": event.day, "part": part, "pieces": pieces, "cents": cents, "why": why}
        self.posted.append(Posted(key=event.key, undoes=undoes, **line))

    def _pass(self, event):
        line = {"day": event.day, "part": event.part, "key": event.key, "undoes": event.key}
        for sign, why in ((1, event.why), (-1, event.gone)):
            self.posted.append(Posted(pieces=sign * event.pieces, cents=sign * event.cents, why=why, **line))

    def _add(self, event, part, pieces, cents):
        pool = self.pools[part]
        pool[0] += pieces
        pool[1] += cents
        self._post(event, part, pieces, cents, event.why)

    def _come(self, event):
        self._add(event, event.part, event.pieces, self._worth(event))

    def _worth(self, event):
        if event.undoes:
            return max(0, -self.by_key[event.undoes, event.part])
        if event.cents is not None:
            return event.cents
        pieces, cents = self.pools[event.part]
        if pieces > 0:
            return part_of_whole(cents, event.pieces, pieces)
        return event.pieces * self.prices.get(event.part, 0)

    def _make(self, waiting):
        """Makings in an order in which what each takes is there; those that never find it go last, as they came."""
        while waiting:
            ready = [event for event in waiting if self._has(event)]
            if not ready:
                ready = waiting[:1]
            for event in ready:
                if len(ready) == 1 or self._has(event):
                    self._turn(event)
                    waiting.remove(event)

    def _has(self, event):
        return all(self.pools[part][0] >= pieces for part, pieces in event.takes)

    def _turn(self, event):
        value = event.work_cents
        for part, pieces in event.takes:
            cents = self._share(part, pieces)
            self._add(event, part, -pieces, -cents)
            value += cents
        weights = [pieces * self.prices.get(part, 0) for part, pieces in event.makes]
        if not any(weights):
            weights = [pieces for _, pieces in event.makes]
        for (part, pieces), cents in zip(event.makes, spread(value, weights), strict=True):
            self._add(event, part, pieces, cents)

    def _leave(self, event):
        cents = self._share(event.part, event.pieces)
        pieces, all_cents = self.pools[event.part]
        if event.undoes and event.pieces != pieces:
            cents = min(all_cents, max(0, self.by_key[event.undoes, event.part]))
        self._add(event, event.part, -event.pieces, -cents)

    def _share(self, part, pieces):
        """Cents that so many pieces take along; never more than there are."""
        there, cents = self.pools[part]
        if pieces >= there:
            return max(0, cents)
        return part_of_whole(cents, pieces, there)
