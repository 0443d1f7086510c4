"""What becomes of gear where it lies: marked to mend or held back, mended, scrapped, burnt, used up.

Takes lines at a store (scrap, burn and mark also on a colony); gives the Act. Held-back gear is neither mended
nor released here: that is the inspector's word.
"""

from inventory.deadouts.holds import why_held
from inventory.errors import HeldBack, SamePlace, refuse
from inventory.gear import Condition, Kind, Reason
from inventory.ledger.lines import Line, checked, condition_of
from inventory.ledger.posting import Entry, post, turned
from inventory.ledger.rules import inside, refuse_unstarted, store
from inventory.locations import outside
from inventory.models import Location

BECAUSE = {
    Condition.SOUND: Reason.MENDED,
    Condition.TO_MEND: Reason.BROKEN,
    Condition.HELD: Reason.HELD,
}


def mend(*, at, lines, day, who, key, found_allowed=False, note=""):
    """Gear to mend at a store is sound again. The lines' own condition is not asked."""
    broken = [Line(line.part, line.quantity, Condition.TO_MEND) for line in lines]

    def entries():
        return _marked(store(at), checked(broken, act="mend"), Condition.SOUND)

    return post("mend", entries, day=day, who=who, key=key, note=note, found_allowed=found_allowed)


def mark(*, at, lines, becomes, day, who, key, found_allowed=False, note=""):
    """Gear at a store or on a colony is to mend, or held back. Held-back gear stays held back."""

    def entries():
        here = inside(at)
        refuse_unstarted(here, day)
        return _marked(here, checked(lines, act="mark"), becomes)

    return post("mark", entries, day=day, who=who, key=key, note=note, found_allowed=found_allowed)


def _marked(here, lines, becomes):
    held = [line for line in lines if line.condition == Condition.HELD]
    refuse(
        HeldBack(part=line.part, act="marked anew", location=here, why=why_held(here, line.part))
        for line in held
    )
    entries = []
    for line in lines:
        after = condition_of(line.part, becomes)
        if line.condition == after:
            raise SamePlace(location=f"{line.part}, {after}")
        entries += turned(
            part=line.part,
            quantity=line.quantity,
            source=here,
            target=here,
            was=line.condition,
            becomes=after,
            reason=BECAUSE[after],
        )
    return entries


def scrap(*, at, lines, day, who, key, found_allowed=False, note=""):
    """Gear that is thrown away."""
    return _gone("scrap", Location.Kind.SCRAP, Reason.SCRAPPED, at, lines, day, who, key, found_allowed, note)


def burn(*, at, lines, day, who, key, found_allowed=False, note=""):
    """Gear that was burnt, as where foulbrood was found. The page carries the cautions."""
    return _gone("burn", Location.Kind.BURNT, Reason.BURNT, at, lines, day, who, key, found_allowed, note)


def _gone(name, kind, reason, at, lines, day, who, key, found_allowed, note):
    def entries():
        here, away = inside(at), outside(kind)
        refuse_unstarted(here, day)
        return [_left(line, here, away, reason) for line in checked(lines, act=name)]

    return post(name, entries, day=day, who=who, key=key, note=note, found_allowed=found_allowed)


def use(*, at, lines, day, who, key, found_allowed=False, note=""):
    """Feed fed and consumables used up, from a store."""

    def entries():
        here, away = store(at), outside(Location.Kind.USED)
        return [
            _left(line, here, away, Reason.FED if line.part.kind == Kind.FEED else Reason.USED)
            for line in checked(lines, act="use")
        ]

    return post("use", entries, day=day, who=who, key=key, note=note, found_allowed=found_allowed)


def _left(line, here, away, reason):
    return Entry(
        part=line.part,
        quantity=line.quantity,
        condition=line.condition,
        source=here,
        target=away,
        reason=reason,
    )
