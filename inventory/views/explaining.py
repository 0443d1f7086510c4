"""Explanations in words, each with the acts that would put it right as links to their pages, filled in.

Takes Explanations and who looks; gives Told, numbered as they stand. Links only to pages that exist and are open to
them. Changes nothing.
"""

from dataclasses import dataclass
from urllib.parse import urlencode

from django.urls import NoReverseMatch, reverse

from apiary.errors import told as day_words
from apiary.models import Colony
from apiary.rights import may
from inventory.models import Location, Order, Part
from inventory.pieces import many
from inventory.reconcile import Explanation, Likely

NAMED = 6  # colonies that are named before "and so many more"


@dataclass(frozen=True, kw_only=True)
class Told:
    """One explanation as the page shows it; `ways` are (address, words of the link)."""

    number: int
    explanation: Explanation
    sentence: str
    ways: tuple[tuple[str, str], ...]


class Names:
    """The rows that the explanations name by their keys, read at once."""

    def __init__(self, explanations):
        places = {key for one in explanations for key in (one.place, one.source, one.target) if key}
        self.places = Location.objects.select_related("yard", "colony").in_bulk(places)
        self.parts = Part.objects.in_bulk(field_name="code")
        self.colonies = Colony.objects.in_bulk({pk for one in explanations for pk in one.colonies})
        self.orders = Order.objects.in_bulk({one.order for one in explanations if one.order})

    def pieces(self, pieces):
        """12 × hive stand and 2 × medium box, 10 frames, to mend."""
        words = []
        for code, condition, quantity in pieces:
            part = self.parts[code]
            unit = f" {many(part.unit, quantity)} of" if part.unit != "piece" else " ×"
            words.append(
                f"{quantity:,}{unit} {part.name}" + (f", {condition}" if condition != "sound" else "")
            )
        return " and ".join(filter(None, ["; ".join(words[:-1]), words[-1]]))

    def tags(self, colonies):
        tags = [self.colonies[pk].tag for pk in colonies]
        rest = len(tags) - NAMED
        return ", ".join(tags[:NAMED]) + (f" and {rest} more" if rest > 0 else "")


def told(explanations, *, day, user):
    """Told of each explanation, numbered from 1."""
    names = Names(explanations)
    return [
        Told(
            number=number,
            explanation=one,
            sentence=SENTENCES[one.likely](one, names),
            ways=tuple(filter(None, WAYS[one.likely](one, names, day, user))),
        )
        for number, one in enumerate(explanations, 1)
    ]


def sentences_of(explanations):
    """The sentence of each, without the ways to put it right."""
    names = Names(explanations)
    return [SENTENCES[one.likely](one, names) for one in explanations]


def _unbooked(one, names):
    source, target = names.places[one.source], names.places[one.target]
    return (
        f"{names.pieces(one.pieces)}: missing at {source}, and as many more were counted at {target}. "
        "They were taken there and it was not booked."
    )


def _booked(rest):
    def sentence(one, names):
        source, target = names.places[one.source], names.places[one.target]
        return (
            f"{names.pieces(one.pieces)}: booked from {source} to {target} on {day_words(one.day)}. "
            + rest.format(place=names.places[one.place], source=source, target=target)
        )

    return sentence


def _on_hives(rest):
    def sentence(one, names):
        return f"{names.pieces(one.pieces)}: as many as make supers. " + rest.format(
            tags=names.tags(one.colonies)
        )

    return sentence


def _plain(rest):
    def sentence(one, names):
        colony = names.tags(one.colonies)
        order = names.orders.get(one.order)
        return f"{names.pieces(one.pieces)}: " + rest.format(colony=colony, order=order, times=one.times)

    return sentence


SENTENCES = {
    Likely.UNBOOKED: _unbooked,
    Likely.LATER: _booked("Perhaps it was done by the evening of the count already."),
    Likely.OTHER_WAY: _booked("The other way round it would explain all of it."),
    Likely.NEVER_CAME: _booked("Perhaps they never came to {place}."),
    Likely.STILL_HERE: _booked("Perhaps they are still at {place}."),
    Likely.ELSEWHERE: _booked("Perhaps they came to {place} instead."),
    Likely.TWICE: _booked("The same was booked within three days of it: perhaps one load was entered twice."),
    Likely.SUPER_UP: _on_hives(
        "In flow and without a super by the book: {tags}. Perhaps they went on and it was not booked."
    ),
    Likely.PULLED: _on_hives(
        "With supers by the book: {tags}. Perhaps they were pulled and it was not booked."
    ),
    Likely.ASSEMBLED: _plain("assembled {times} times, it seems, and not booked."),
    Likely.NOT_ASSEMBLED: _plain("booked as assembled {times} times, and still counted in pieces."),
    Likely.DRAWN: _plain("drawn by the bees, it seems, and not booked."),
    Likely.MARKED: _plain("the same gear, in another condition than the book has it."),
    Likely.DEADOUT: _plain(
        "colony {colony} is no more and the book still has them on it. Perhaps they were carried off before it was worked."
    ),
    Likely.RECEIPT: _plain("still to come on order {order}. Perhaps they came and were not received."),
}


def _way(user, name, words, *, args=(), first=(), **query):
    """(address, words) of the first of these pages that exists and is open to them; None where none is."""
    for one in (*first, name):
        try:
            address = reverse(one, args=args)
        except NoReverseMatch:
            continue
        if may(user, one):
            query = {key: value for key, value in query.items() if value}
            return (f"{address}?{urlencode(query)}" if query else address, words)
    return None


def _numbers(one, times=1):
    return {f"n__{part}__{condition.replace(' ', '_')}": n // times for part, condition, n in _keyed(one)}


def _keyed(one):
    return [(part, {"held back": "held"}.get(condition, condition), n) for part, condition, n in one.pieces]


def _carry(one, source, target, day, user, *, times=1):
    """The way to book that these pieces went from one place to the other."""
    numbers = _numbers(one, times)
    if source.yard_id and target.yard_id:
        ends = {"source": source.yard.code, "target": target.yard.code, "yard": target.yard.code}
        return _way(user, "act-move", f"Haul them from {source} to {target}", day=day, **ends, **numbers)
    if target.colony_id and source.yard_id:
        ends = {"colony": target.colony_id, "source": source.yard.code}
        return _way(user, "act-place", f"Place them on {target}", day=day, **ends, **numbers)
    if source.colony_id and target.yard_id:
        if source.colony.ended_on is not None and source.colony.ended_on <= day:
            return _dead(user, source, source.colony_id, day)
        ends = {"colony": source.colony_id, "target": target.yard.code}
        return _way(user, "act-take-off", f"Take them off {source}", day=day, **ends, **numbers)
    return None


def _reverse(one, user):
    return _way(user, "books-reverse", "Reverse that act", args=[one.act]) if one.act and one.whole else None


def _look(one, user):
    return _way(user, "books-act", "Look at that act", args=[one.act]) if one.act and not one.whole else None


def _carried(one, names, day, user):
    return [_carry(one, names.places[one.source], names.places[one.target], day, user)]


def _redone(one, names, day, user):
    source, target = names.places[one.source], names.places[one.target]
    return [_reverse(one, user), _carry(one, source, target, day, user)]


def _turned(one, names, day, user):
    source, target = names.places[one.source], names.places[one.target]
    return [_reverse(one, user), _look(one, user), _carry(one, target, source, day, user, times=2)]


def _undone(one, names, day, user):
    """Reversed where all of the act is explained, else what did not come is carried back."""
    source, target = names.places[one.source], names.places[one.target]
    back = None if one.whole else _carry(one, target, source, day, user)
    return [_reverse(one, user), _look(one, user), back]


def _here(one, names, day, user):
    return [_carry(one, names.places[one.target], names.places[one.place], day, user)]


def _supers(page, fallback, verb):
    def ways(one, names, day, user):
        yard = names.places[one.place].yard
        hives = names.colonies[one.colonies[0]].yard
        query = {"yard": (yard if hives.pk == yard.pk else hives).code, "source": yard.code, "day": day}
        return [_way(user, fallback, verb, first=(page,), **query)]

    return ways


def _bench(one, names, day, user):
    yard = names.places[one.place].yard
    return [
        _reverse(one, user),
        None
        if one.likely == Likely.NOT_ASSEMBLED
        else _way(
            user, "act-assemble", "Assemble them", yard=yard.code, recipe=one.recipe, day=day, times=one.times
        ),
    ]


def _at(page, words):
    def ways(one, names, day, user):
        place = names.places[one.place]
        ground = {"yard": place.yard.code} if place.yard_id else {"colony": place.colony_id}
        return [_way(user, page, words, day=day, **ground)]

    return ways


def _condition(one, names, day, user):
    page, words = ("act-mend", "Mend them") if one.pieces[1][1] == "sound" else ("act-mark", "Set them aside")
    return _at(page, words)(one, names, day, user)


def _deadout(one, names, day, user):
    return [_dead(user, names.tags(one.colonies), one.colonies[0], day)]


def _dead(user, tag, colony, day):
    words = f"Work the deadout {tag}"
    return _way(user, "act-salvage", words, first=("act-deadout",), colony=colony, day=day)


def _receipt(one, names, day, user):
    order = names.orders[one.order]
    return [_way(user, "order-receive", f"Receive {order}", args=[order.pk], day=day)]


WAYS = {
    Likely.UNBOOKED: _carried,
    Likely.LATER: _redone,
    Likely.OTHER_WAY: _turned,
    Likely.NEVER_CAME: _undone,
    Likely.STILL_HERE: _undone,
    Likely.ELSEWHERE: _here,
    Likely.TWICE: _undone,
    Likely.SUPER_UP: _supers("act-super-up", "act-place", "Super up"),
    Likely.PULLED: _supers("act-pull", "act-take-off", "Pull supers"),
    Likely.ASSEMBLED: _bench,
    Likely.NOT_ASSEMBLED: _bench,
    Likely.DRAWN: _at("act-draw", "Book the comb as drawn"),
    Likely.MARKED: _condition,
    Likely.DEADOUT: _deadout,
    Likely.RECEIPT: _receipt,
}
