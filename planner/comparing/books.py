"""What of the books an order rested on, kept with its run so that the next one can say what changed since.

Takes an operation and its assumptions; gives plain JSON values: colonies, losses, gear, what is on the way, prices.
"""

from planner.requirement.season_gear import plain
from planner.season.calendar import turns_of


def books_of(operation, assumptions):
    """Plain values alone: a run stores them."""
    so_far, turns = operation.so_far, turns_of(assumptions)
    return {
        "day": operation.day.isoformat(),
        "colonies": sum(group.colonies for group in operation.colonies),
        "winter_ahead": turns.winter < turns.autumn and not assumptions.winter_counted,
        "survival_share": assumptions.survival_share,
        "splits_made": so_far.splits_made,
        "nucs_sold": so_far.nucs_sold,
        "dead": [[day.isoformat(), count] for day, count in so_far.dead],
        "owned": dict(sorted(_owned(operation).items())),
        "on_order": dict(sorted(_on_order(operation).items())),
        "prices": {
            offer.code: [[packs, str(price)] for packs, price in offer.prices] for offer in operation.offers
        },
        "offers": {offer.code: offer.name for offer in operation.offers},
        "parts": {part.code: part.name for part in operation.parts},
    }


def _owned(operation):
    """part planned as -> sound pieces, in stores and on colonies."""
    pieces: dict = {}
    for line in operation.stock:
        if line.condition == "sound":
            pieces[plain(line.part)] = pieces.get(plain(line.part), 0) + line.quantity
    for group in operation.colonies:
        for part, count in group.gear.items():
            pieces[plain(part)] = pieces.get(plain(part), 0) + count
    return {part: count for part, count in pieces.items() if count}


def _on_order(operation):
    pieces: dict = {}
    for line in operation.on_order:
        pieces[plain(line.part)] = pieces.get(plain(line.part), 0) + line.quantity
    return pieces
