"""Boxes going on: supers, and a further brood box, for one colony or a whole yard in one act.

Takes {colony: boxes} and the store they come from; gives the Act. What the hand holds beyond the book is booked as
found in the same act. A brood box changes the set its colony stands in, where the keeper has such a set.
"""

from apiary import colonies as bees
from inventory.errors import NoBoxFits, UnknownWord, refuse
from inventory.gear import Condition, Reason
from inventory.ledger.balances import balances_from
from inventory.ledger.lines import Line
from inventory.ledger.posting import Entry
from inventory.ledger.rules import refuse_unfit, store
from inventory.yardwork.boxsets import brood_box_of, brood_boxes, frames_for, set_with, super_of, supers
from inventory.yardwork.filling import Fill, filled
from inventory.yardwork.hives import hives_told, refuse_each
from inventory.yardwork.whole import together

FEWER = 2  # a super for ten holds as few as eight drawn combs, spaced


def super_up(
    *,
    colonies,
    source,
    day,
    who,
    key,
    box=None,
    fill=Fill.STORE,
    combs=None,
    found_allowed=True,
    note="",
):
    """Supers go on. `box` is the code of a super (none: each hive's own by its width); `combs` drawn ones in a box."""

    def work(_key):
        return _going_on("super up", colonies, source, day, _choice(box, super_of, supers), fill, combs)[1]

    return together("super up", work, day=day, who=who, key=key, note=note, found_allowed=found_allowed)


def add_brood_box(*, colonies, source, day, who, key, box=None, fill=Fill.STORE, found_allowed=True, note=""):
    """A brood box more; `box` is its code, none: the first that fits of the depth the hive's brood stands in."""

    def work(act_key):
        choice = _choice(box, brood_box_of, brood_boxes)
        told, entries = _going_on("brood box", colonies, source, day, choice, fill, None)
        for hive, box_set in told:
            grown = set_with(hive.colony.hive_set, box_set, hive.number)
            if grown is not None:
                bees.change_set(hive.colony, hive_set=grown, day=day, who=who, act_key=act_key)
        return entries

    return together("brood box", work, day=day, who=who, key=key, note=note, found_allowed=found_allowed)


def _choice(code, one_of, all_of):
    """A function that gives the box for a hive set."""
    if code is not None:
        chosen = one_of(code)
        return lambda _hive_set: chosen
    known = all_of()

    def own(hive_set):
        fit = [one for one in known if one.fits(hive_set)]
        depths = [one for one in fit if getattr(hive_set, f"{one.depth}_boxes")]
        return next(iter((depths or fit) if all_of is brood_boxes else fit), None)

    return own


def _going_on(act, colonies, source, day, choice, fill, combs):
    """([(hive, its BoxSet)], the entries that carry boxes and frames to them); refused where one does not fit."""
    if fill not in set(Fill):
        raise UnknownWord(word=fill, what="filling of a box", choices=", ".join(Fill))
    here = store(source)
    hives = hives_told(colonies, day=day, act=act, what="boxes")
    told = [(hive, choice(hive.colony.hive_set)) for hive in hives]
    refuse(NoBoxFits(colony=hive.colony, hive_set=hive.colony.hive_set) for hive, one in told if one is None)
    boxes = dict(told)
    refuse_each(hives, lambda hive: _refuse_misfit(hive, boxes[hive]))
    entries = []
    for box_set in dict.fromkeys(boxes.values()):
        group = [hive for hive in hives if boxes[hive] == box_set]
        entries += _carried(group, box_set, here, day, fill, combs)
    return told, entries


def _refuse_misfit(hive, box_set):
    refuse_unfit([Line(box_set.box, hive.number)], hive.place)
    if not box_set.fits(hive.colony.hive_set):
        raise NoBoxFits(colony=hive.colony, hive_set=hive.colony.hive_set)


def _carried(hives, box_set, here, day, fill, combs):
    """Entries for hives that all get the same kind of box."""
    parts = frames_for(box_set)
    drawn_parts, foundation = box_set.combs(parts), box_set.foundation(parts)
    there = in_store(here, day, [*drawn_parts, foundation])
    given = filled(
        [hive.number for hive in hives],
        drawn=sum(there[part] for part in drawn_parts),
        foundation=there[foundation],
        combs=_spaced(box_set, combs),
        frames=box_set.frames,
        fill=Fill(fill),
    )
    for hive, frames in zip(hives, given, strict=True):
        lines = [(box_set.box, hive.number), *_combs(frames.drawn, drawn_parts, there)]
        lines.append((foundation, frames.foundation))
        for part, quantity in lines:
            if quantity:
                yield Entry(
                    part=part, quantity=quantity, source=here, target=hive.place, reason=Reason.PLACED
                )


def _spaced(box_set, combs):
    """How many drawn combs hang in a box: as told, from two fewer than wall to wall."""
    if combs is None:
        return box_set.frames
    if combs not in range(box_set.frames - FEWER, box_set.frames + 1):
        choices = ", ".join(str(n) for n in range(box_set.frames - FEWER, box_set.frames + 1))
        raise UnknownWord(word=combs, what="number of combs for this box", choices=choices)
    return combs


def _combs(number, parts, there):
    """So many drawn combs, the first choice first as far as the store has it, the rest of the first choice."""
    lines = []
    for part in parts:
        taken = min(number, there[part])
        there[part] -= taken
        number -= taken
        lines.append((part, taken))
    return [(parts[0], lines[0][1] + number), *lines[1:]]


def in_store(here, day, parts):
    """{Part: sound pieces} that can be taken from a store on a day, so that no later day lacks them."""
    keys = {(here, part, Condition.SOUND) for part in parts}
    return {key[1]: min(n for _, n in line) for key, line in balances_from(day, keys).items()}
