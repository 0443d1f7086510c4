"""A whole yard lost, or part of it: flood, theft, a bear. Its colonies end and their gear is lost but what was saved.

Takes the colonies, the cause, whether the store was lost too, and what was saved in sum; gives the Act. Gear that
still stands there is left on the hives and worked later, one by one, as any deadout.
"""

from enum import StrEnum

from apiary import colonies as bees
from apiary.models import Colony
from inventory.errors import Refused, SamePlace, UnknownWord, refuse
from inventory.gear import Condition, Reason
from inventory.ledger.lines import checked, condition_of
from inventory.ledger.posting import turned
from inventory.ledger.rules import colony_place, refuse_not_living, store
from inventory.locations import outside
from inventory.models import Location
from inventory.yardwork.refusals import ElsewhereThatDay, NoColony
from inventory.yardwork.sharing import booked_at, carried, rest, taken, worked_later
from inventory.yardwork.whole import together


class Cause(StrEnum):
    FLOOD = "flood"
    THEFT = "theft"
    BEAR = "bear"
    FIRE = "fire"
    STORM = "storm"
    VANDALS = "vandals"


def lose_yard(
    *,
    yard,
    colonies,
    cause,
    into,
    day,
    who,
    key,
    why=Colony.Ended.LOST,
    gear_stands=False,
    store_too=False,
    saved=(),
    saved_as=Condition.SOUND,
    found_allowed=True,
    note="",
):
    """`saved`: Lines as the book has them, that go into the store `into` as `saved_as`, of the hives first, then of
    the lost store; all else is lost. What was held back stays so.

    With `gear_stands` the hives' gear is not touched: they wait to be worked.
    """

    def work(act_key):
        if cause not in set(Cause):
            raise UnknownWord(word=cause, what="cause", choices=", ".join(Cause))
        if not colonies and not store_too:
            raise NoColony(act="write off")
        places = [colony_place(colony) for colony in colonies]
        refuse(_problems(places, yard, day, cleared=not gear_stands))
        words = f"{cause}, {note}" if note else str(cause)
        for place in places:
            bees.end(place.colony, why=why, day=day, who=who, note=words, act_key=act_key)
        sources = [*([] if gear_stands else places), *([store(yard)] if store_too else [])]
        home = store(into)
        if home in sources:
            raise SamePlace(location=home)
        return _entries(sources, saved, saved_as, home, day)

    return together("lose a yard", work, day=day, who=who, key=key, note=note, found_allowed=found_allowed)


def _problems(places, yard, day, *, cleared):
    for place in places:
        try:
            refuse_not_living(place, day)
        except Refused as refusal:
            yield from refusal.problems
        stood = bees.yard_on(place.colony, day)
        if stood != yard:
            yield ElsewhereThatDay(colony=place.colony, yard=yard, other_yard=stood, day=day)
    if cleared:
        yield from worked_later(places, day, "written off")


def _entries(sources, saved, saved_as, home, day):
    """What was saved into the store, the rest to what is lost."""
    if not sources:
        return []
    booked = booked_at(sources, day)
    lines = checked(saved, act="save") if saved else []
    kept = [
        entry
        for place, line in taken(lines, booked, beyond=sources[0])
        for entry in _kept(place, line, saved_as, home)
    ]
    return [*kept, *carried(rest(booked), outside(Location.Kind.LOST), Reason.LOST)]


def _kept(place, line, saved_as, home):
    held = Condition.HELD in (line.condition, saved_as)
    becomes = Condition.HELD if held else condition_of(line.part, saved_as)
    return turned(
        part=line.part,
        quantity=line.quantity,
        source=place,
        target=home,
        was=line.condition,
        becomes=becomes,
        reason=Reason.HELD if held else Reason.SALVAGED,
    )
