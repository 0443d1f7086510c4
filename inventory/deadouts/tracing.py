"""Where the pieces of one hive may be by now: followed through stores, loads, benches and other hives. Pure.

Takes what left the hive and a way to ask what left a place from a day on; gives, for each place and part, the most
pieces that may have come from the hive. Pieces of a part cannot be told apart in the books, so this is an upper
bound: never more than left the hive, never more than came that way.
"""

import heapq
import itertools
from collections import defaultdict
from collections.abc import Callable, Hashable, Iterable
from dataclasses import dataclass
from datetime import date


@dataclass(frozen=True, kw_only=True)
class Way:
    """So many pieces of a part went from a place to another on a day; across a bench the part may change."""

    day: date
    part: Hashable
    quantity: int
    to: Hashable
    becomes: Hashable


def trace(first: Iterable[Way], onward: Callable[[Hashable, Hashable, date], Iterable[Way]]):
    """{(place, part): most pieces}. `onward(place, part, since)` tells what left it; each place is asked once."""
    came: dict[tuple, int] = defaultdict(int)
    most: dict[Hashable, int] = defaultdict(int)
    first = tuple(first)
    all_of_it = sum(way.quantity for way in first)
    number = itertools.count()
    queue: list[tuple] = []
    for way in first:
        most[way.becomes] += way.quantity
        came[way.to, way.becomes] += way.quantity
        heapq.heappush(queue, (way.day, next(number), way.to, way.becomes))
    asked = set()
    while queue:
        day, _, place, part = heapq.heappop(queue)
        if (place, part) in asked:
            continue
        asked.add((place, part))
        for way in onward(place, part, day):
            came[way.to, way.becomes] += way.quantity
            if way.becomes != part:
                most[way.becomes] += way.quantity
            heapq.heappush(queue, (way.day, next(number), way.to, way.becomes))
    return {key: min(quantity, most[key[1]], all_of_it) for key, quantity in came.items()}
