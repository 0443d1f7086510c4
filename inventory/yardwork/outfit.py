"""What a hive set takes: its boxes, floor and covers piece by piece, and how many frames of each depth.

Takes a hive set; gives an Outfit, by the gear set that fills it or, for a set of the keeper's own without one, by
its boxes. NoOutfit where the catalogue lacks a piece. Changes nothing.
"""

from dataclasses import dataclass

from apiary.models import HiveSet
from inventory.gear import Comb, CombUse, Depth, Kind
from inventory.models import GearSet, Part
from inventory.yardwork.refusals import NoOutfit


@dataclass(frozen=True, kw_only=True)
class Outfit:
    """`pieces`: all but the frames, {Part: number}; `frames`: {depth: number}, the first depth is the brood's."""

    pieces: dict
    frames: dict

    @property
    def depth(self):
        """The depth of the brood frames."""
        return next(iter(self.frames))


def outfit_of(hive_set):
    """All that a colony in this set stands in."""
    filled = GearSet.objects.filter(hive_set=hive_set.code).prefetch_related("lines__part").first()
    if filled is None:
        return _built(hive_set)
    pieces: dict[Part, int] = {}
    frames: dict[str, int] = {}
    for line in filled.lines.all():
        if line.part.kind == Kind.FRAME:
            frames[line.part.depth] = frames.get(line.part.depth, 0) + line.quantity
        elif line.part.kind != Kind.FOUNDATION:
            pieces[line.part] = line.quantity
    return Outfit(pieces=pieces, frames=_in_order(frames))


def usual_set(mothers):
    """The smallest full set of the width most of these colonies stand in."""
    widths = [mother.hive_set.width for mother in mothers if not mother.hive_set.is_nuc]
    return full_set(max(set(widths), key=widths.count) if widths else None)


def full_set(width=None):
    """The smallest set that is no nuc, of a width where one is told; any set where there is none."""
    sets = HiveSet.objects.filter(is_nuc=False)
    rows = sets.filter(width=width) if width else sets
    return min(rows, key=lambda one: (_boxes(one), -one.width), default=None) or HiveSet.objects.first()


def _boxes(hive_set):
    return hive_set.deep_boxes + hive_set.medium_boxes + hive_set.shallow_boxes


def frame_of(depth, comb):
    """The part that is a frame of that depth: with foundation, or drawn brood comb."""
    use = CombUse.BROOD if comb == Comb.DRAWN else ""
    rows = Part.objects.filter(kind=Kind.FRAME, depth=depth, comb=comb, comb_use=use)
    part = rows.filter(treated=False, flat=False).first()
    if part is None:
        raise NoOutfit(piece=f"{depth} frame ({comb})", hive_set=depth)
    return part


def _built(hive_set):
    """The outfit of a set that no gear set fills, by what the set says of itself."""
    told = {
        Depth.DEEP: hive_set.deep_boxes,
        Depth.MEDIUM: hive_set.medium_boxes,
        Depth.SHALLOW: hive_set.shallow_boxes,
    }
    boxes = {str(depth): number for depth, number in told.items() if number}
    kind = Kind.NUC_BOX if hive_set.is_nuc else Kind.BOX
    pieces = {_part(hive_set, kind, depth=depth): number for depth, number in boxes.items()}
    if not hive_set.is_nuc:
        pieces |= dict.fromkeys(_floor_and_covers(hive_set), 1)
    frames = {depth: number * hive_set.width for depth, number in boxes.items()}
    return Outfit(pieces=pieces, frames=_in_order(frames))


def _floor_and_covers(hive_set):
    if hive_set.base == HiveSet.Base.FLOOR:  # a quarter of a pallet is no piece of its own
        yield _part(hive_set, Kind.FLOOR)
    migratory = hive_set.cover == HiveSet.Cover.MIGRATORY
    if not migratory:
        yield _part(hive_set, Kind.INNER_COVER)
    yield _part(hive_set, Kind.COVER, migratory=migratory)


def _part(hive_set, kind, *, depth="", migratory=False):
    rows = Part.objects.filter(kind=kind, width=hive_set.width, flat=False)
    rows = rows.filter(depth=depth) if depth else rows
    if kind == Kind.COVER:
        rows = (
            rows.filter(name__icontains="migratory")
            if migratory
            else rows.exclude(name__icontains="migratory")
        )
    part = rows.first()
    if part is None:
        raise NoOutfit(piece=f"{depth} {kind} for {hive_set.width} frames".strip(), hive_set=hive_set)
    return part


def _in_order(frames):
    return {str(depth): frames[depth] for depth in Depth if frames.get(depth)}
