"""A split, and a nuc hived: a colony comes into gear of its own.

Takes mothers with the tags of their daughters, the set the daughters stand in, the frames that go along and the
store that gives the rest; gives the Act. Mother and daughter are linked in both histories. Splits of a whole yard
are one act.
"""

from dataclasses import dataclass

from apiary import colonies
from apiary.models import Colony
from inventory.errors import Refused, refuse
from inventory.gear import Comb, Kind, Reason
from inventory.ledger.lines import Line, whole
from inventory.ledger.rules import colony_place, refuse_not_living, refuse_unfit, store
from inventory.locations import place_of
from inventory.yardwork.combs import along, combs_of, dealt
from inventory.yardwork.outfit import frame_of, outfit_of
from inventory.yardwork.refusals import NoBoxForFrames, NoColony, NoRoomForFrames, NotANuc, StillANuc
from inventory.yardwork.sharing import booked_at, carried, suspected, taken
from inventory.yardwork.whole import together


@dataclass(frozen=True, kw_only=True)
class Daughters:
    """The tags of all splits made from one mother."""

    mother: Colony
    tags: tuple[str, ...]


@dataclass(frozen=True, kw_only=True)
class SplitPlan:
    """How each split is made: `frames` combs with bees go along, the set is filled up from the store.

    `fill`: the frames that fill up, with foundation or drawn; `refill`: the mother's gaps are filled too. `yard`: where
    the daughters go, None: they stay. `queen`: where the daughters' queens are from, '' for not told.
    """

    hive_set: object
    source: object
    frames: int = 5
    fill: Comb = Comb.FOUNDATION
    refill: bool = True
    yard: object = None
    queen: str = ""


def split(*, daughters, plan, day, who, key, found_allowed=True, note=""):
    """Each mother gives as many splits as tags are told for her."""

    def work(act_key):
        if not any(one.tags for one in daughters):
            raise NoColony(act="split")
        outfit = outfit_of(plan.hive_set)
        _refuse_frames(plan, outfit)
        entries, problems = [], []
        for one in daughters:
            try:
                entries += _parted(one, plan, outfit, day=day, who=who, act_key=act_key)
            except Refused as refusal:
                problems += refusal.problems
        refuse(problems)
        return entries

    return together("split", work, day=day, who=who, key=key, note=note, found_allowed=found_allowed)


def _refuse_frames(plan, outfit):
    whole("frames that go along", plan.frames, lowest=0)
    room = outfit.frames[outfit.depth]
    if plan.frames > room:
        raise NoRoomForFrames(wanted=plan.frames, depth=outfit.depth, hive_set=plan.hive_set, room=room)


def _parted(one, plan, outfit, *, day, who, act_key):
    """The daughters of one mother: started, linked, and what comes to stand under them."""
    here = colony_place(one.mother)
    refuse_not_living(here, day)
    refuse(suspected([here], "split"))
    combs = combs_of(here, outfit.depth, plan.frames * len(one.tags), day)
    shelf = store(plan.source)
    entries = []
    for tag in one.tags:
        daughter = colonies.split(
            one.mother,
            tag=tag,
            yard=plan.yard or colonies.yard_on(one.mother, day),
            hive_set=plan.hive_set,
            day=day,
            who=who,
            act_key=act_key,
        )
        if plan.queen:
            colonies.requeen(daughter, queen=plan.queen, day=day, who=who, act_key=act_key)
        there = place_of(daughter)
        go, combs = dealt(combs, plan.frames)
        entries += along(go, here, there)
        lines = _lacking(outfit, {outfit.depth: plan.frames}, {}, plan.fill)
        refuse_unfit(lines, there)
        entries += carried([(shelf, line) for line in lines], there, Reason.PLACED)
    if plan.refill and plan.frames and one.tags:
        gaps = Line(frame_of(outfit.depth, plan.fill), plan.frames * len(one.tags))
        entries += carried([(shelf, gaps)], here, Reason.PLACED)
    return entries


def _lacking(outfit, frames, pieces, fill):
    """Lines of the outfit less the frames and pieces that are there."""
    lines = [Line(part, number - pieces.get(part, 0)) for part, number in outfit.pieces.items()]
    for depth, number in outfit.frames.items():
        lines.append(Line(frame_of(depth, fill), number - frames.get(depth, 0)))
    return [line for line in lines if line.quantity > 0]


def hive_nuc(
    *, colony, hive_set, source, into, day, who, key, fill=Comb.FOUNDATION, found_allowed=True, note=""
):
    """A colony in a nuc box comes into a full set with its frames; the box goes into the store `into`."""

    def work(act_key):
        here, shelf, home = colony_place(colony), store(source), store(into)
        nuc = here.colony
        refuse_not_living(here, day)
        if not nuc.hive_set.is_nuc:
            raise NotANuc(colony=nuc, hive_set=nuc.hive_set)
        if hive_set.is_nuc:
            raise StillANuc(colony=nuc, hive_set=hive_set)
        outfit, old = outfit_of(hive_set), outfit_of(nuc.hive_set)
        booked = booked_at([here], day)
        frames = _frames_there(booked[here])
        _refuse_depths(frames, outfit, hive_set)
        colonies.change_set(nuc, hive_set=hive_set, day=day, who=who, act_key=act_key)
        nuc.hive_set = hive_set
        back = taken(_left_behind(booked[here], old, hive_set), booked, beyond=here)
        pieces = _by_part(booked[here])
        lines = _lacking(outfit, frames, pieces, fill)
        refuse_unfit(lines, here)
        shares = [(shelf, line) for line in lines]
        return [*carried(back, home, Reason.TAKEN_OFF), *carried(shares, here, Reason.PLACED)]

    return together("hive a nuc", work, day=day, who=who, key=key, note=note, found_allowed=found_allowed)


def _by_part(books):
    pieces: dict = {}
    for (part, _condition), number in books.items():
        pieces[part] = pieces.get(part, 0) + number
    return pieces


def _frames_there(books):
    frames: dict[str, int] = {}
    for (part, _condition), number in books.items():
        if part.kind == Kind.FRAME:
            frames[part.depth] = frames.get(part.depth, 0) + number
    return frames


def _refuse_depths(frames, outfit, hive_set):
    refuse(NoBoxForFrames(depth=depth, hive_set=hive_set) for depth in frames if depth not in outfit.frames)
    refuse(
        NoRoomForFrames(wanted=number, depth=depth, hive_set=hive_set, room=outfit.frames[depth])
        for depth, number in frames.items()
        if number > outfit.frames[depth]
    )


def _left_behind(books, old, hive_set):
    """The nuc box itself, booked or not, and all else that does not fit the new width."""
    lines = [
        Line(part, number, condition)
        for (part, condition), number in books.items()
        if part.kind == Kind.NUC_BOX or (part.width is not None and part.width != hive_set.width)
    ]
    named = {line.part for line in lines}
    boxes = [part for part in old.pieces if part.kind == Kind.NUC_BOX and part not in named]
    return [*lines, *(Line(part, old.pieces[part]) for part in boxes)]
