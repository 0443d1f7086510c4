"""What lies where from a day on, by the books: the running balances an act may not push below zero.

Takes keys (location, part, condition) and a day; gives balances by day. Present from Holding,
later days unwound from the movements after the day. Writes nothing.
"""

from django.db.models import Sum

from inventory.models import Holding, Movement


def net_changes(entries):
    """By (location, part, condition), for inside locations: what the entries add (or take, below zero)."""
    changes: dict[tuple, int] = {}
    for entry in entries:
        for location, sign in ((entry.source, -1), (entry.target, 1)):
            if location.is_inside:
                key = (location, entry.part, entry.condition)
                changes[key] = changes.get(key, 0) + sign * entry.quantity
    return changes


def booked(keys):
    """The present balance of each key."""
    locations, parts = {key[0] for key in keys}, {key[1] for key in keys}
    rows = Holding.objects.filter(location__in=locations, part__in=parts)
    found = {(row.location_id, row.part_id, row.condition): row.quantity for row in rows}
    return {key: found.get((key[0].pk, key[1].pk, str(key[2])), 0) for key in keys}


def balances_from(day, keys):
    """Of each key: [(day, balance that evening), ...] for the day itself and each later day with movements."""
    later = _later_changes(day, keys)
    result = {}
    for key, present in booked(keys).items():
        changes = sorted(later.get((key[0].pk, key[1].pk, str(key[2])), {}).items())
        balance = present - sum(change for _, change in changes)
        line = [(day, balance)]
        for later_day, change in changes:
            balance += change
            line.append((later_day, balance))
        result[key] = line
    return result


def _later_changes(day, keys):
    """{(location, part, condition) by id: {day: change}} for days after `day`."""
    locations, parts = {key[0].pk for key in keys}, {key[1].pk for key in keys}
    changes: dict[tuple, dict] = {}
    for end, sign in (("target", 1), ("source", -1)):
        rows = (
            Movement.objects.filter(day__gt=day, part__in=parts, **{f"{end}__in": locations})
            .order_by()
            .values_list(f"{end}_id", "part_id", "condition", "day")
            .annotate(total=Sum("quantity"))
        )
        for location, part, condition, on, total in rows:
            days = changes.setdefault((location, part, condition), {})
            days[on] = days.get(on, 0) + sign * total
    return changes
