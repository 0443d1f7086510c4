"""The movements in the order of their days: every balance of every evening, worked out again from the first.

Takes the locations and parts; streams the rows once and gives faults in words: what was below zero on any evening,
evenings kept and balances kept that say something else. Holds the balances of one evening, never the rows.
"""

from apiary.errors import told
from inventory.ledger.evenings import add, gear_key, present
from inventory.models import Evening, Movement

CHUNK = 5000
FIELDS = ("day", "source_id", "target_id", "part_id", "condition", "quantity")


class Days:
    """One pass over the days. `balances` are the present ones once `faults` has been read to its end."""

    def __init__(self, locations, parts):
        self.locations, self.parts = locations, {str(pk): part for pk, part in parts.items()}
        self.inside = {pk for pk, row in locations.items() if row.is_inside}
        self.balances: dict[int, dict[str, int]] = {}
        self.lows: dict[tuple, tuple] = {}
        self.touched: set[tuple] = set()
        self.length = 0

    def faults(self):
        """Evenings kept that are wrong, in their order; then what was below zero; then balances that are wrong."""
        evenings = Evening.objects.order_by("day").iterator(chunk_size=1)
        evening, last = next(evenings, None), None
        rows = Movement.objects.order_by("day", "id").values_list(*FIELDS)
        for day, *row in rows.iterator(chunk_size=CHUNK):
            if day is None:
                continue
            if day != last:
                self._close(last)
                while evening and evening.day < day:
                    yield from self._evening_faults(evening)
                    evening = next(evenings, None)
                last = day
            self._move(*row)
        self._close(last)
        while evening:
            yield from self._evening_faults(evening)
            evening = next(evenings, None)
        yield from self._below_zero()
        yield from self._holding_faults()

    def _move(self, source, target, part, condition, quantity):
        self.length += 1
        if not isinstance(quantity, int):
            return
        gear = gear_key(part, condition)
        if source in self.inside:
            add(self.balances, source, gear, -quantity)
            self.touched.add((source, gear))
        if target in self.inside:
            add(self.balances, target, gear, quantity)
            self.touched.add((target, gear))

    def _close(self, day):
        """The evening of a day: what is below zero now."""
        for location, gear in self.touched:
            balance = self.balances.get(location, {}).get(gear, 0)
            if balance < 0:
                first, lowest = self.lows.get((location, gear), (day, 0))
                self.lows[location, gear] = (first, min(lowest, balance))
        self.touched = set()

    def _evening_faults(self, evening):
        kept = _readable(evening.balances)
        if evening.length != self.length:
            yield (
                f"The evening kept of {told(evening.day)} counts {evening.length:,} movements up to it, "
                f"the books hold {self.length:,}."
            )
        if kept is None:
            yield f"The evening kept of {told(evening.day)} cannot be read."
        elif kept != self.balances:
            key = min(_different(kept, self.balances))
            yield (
                f"{self._named(key)}: the evening kept of {told(evening.day)} says {_of(kept, key)}, "
                f"the movements give {_of(self.balances, key)}."
            )

    def _below_zero(self):
        for key, (day, lowest) in sorted(self.lows.items(), key=_order):
            yield f"{self._named(key)}: below zero from {told(day)} on, {lowest} at the lowest."

    def _holding_faults(self):
        held = present()
        for key in sorted(_different(held, self.balances), key=lambda key: _order((key,))):
            yield (
                f"{self._named(key)}: the balance kept is {_of(held, key)}, "
                f"the movements give {_of(self.balances, key)}."
            )

    def _named(self, key):
        location, gear = key
        part, _, condition = gear.partition(" ")
        place = self.locations.get(location, f"place {location}")
        return f"{place}, {self.parts.get(part, f'part {part}')} ({condition})"


def _readable(kept):
    """The balances of an evening kept by location's id; None where they are not written as the ledger writes them."""
    try:
        return {int(location): dict(gears.items()) for location, gears in kept.items()}
    except (AttributeError, ValueError):
        return None


def _different(one, other):
    """The keys (location, gear) whose balances are not the same."""
    return {
        (location, gear)
        for location in set(one) | set(other)
        if one.get(location) != other.get(location)
        for gear in set(one.get(location, ())) | set(other.get(location, ()))
        if _of(one, (location, gear)) != _of(other, (location, gear))
    }


def _of(balances, key):
    return balances.get(key[0], {}).get(key[1], 0)


def _order(item):
    """By place, part's number and condition."""
    (location, gear), *_ = item
    part, _, condition = gear.partition(" ")
    return location, len(part), part, condition
