"""Which boxes a keeper adds to hives: supers and brood boxes, each with the frames that belong in it.

Takes the keeper's gear sets (their codes begin super- or brood-box-); gives BoxSets. A brood box that no gear set
tells of is the box of that depth and width with frames from wall to wall. Changes nothing.
"""

from dataclasses import dataclass

from apiary.models import HiveSet
from inventory.errors import UnknownBox
from inventory.gear import Comb, CombUse, Depth, Kind
from inventory.models import GearSet, Part

SUPER, BROOD_BOX = "super-", "brood-box-"


@dataclass(frozen=True, kw_only=True)
class BoxSet:
    """A box and how many frames it holds from wall to wall; its combs are for honey or for brood."""

    code: str
    name: str
    box: Part
    frames: int
    use: CombUse

    @property
    def depth(self):
        return Depth(self.box.depth)

    @property
    def width(self):
        return self.box.width

    def fits(self, hive_set):
        """A nuc takes no box on top, and widths never mix."""
        return hive_set.width == self.width and not hive_set.is_nuc

    def combs(self, parts):
        """The drawn combs that may go into it, the first choice first: no treated comb under honey."""
        combs = [part for part in parts if part.comb == Comb.DRAWN and part.comb_use == self.use]
        combs = [part for part in combs if self.use == CombUse.BROOD or not part.treated]
        return sorted(combs, key=lambda part: part.treated)

    def foundation(self, parts):
        """The frame with foundation that goes into it."""
        return next(part for part in parts if part.comb == Comb.FOUNDATION and not part.flat)


def frames_for(box_set):
    """Every part that is a frame of the box's depth."""
    return list(Part.objects.filter(kind=Kind.FRAME, depth=box_set.depth))


def supers():
    """The keeper's supers by code."""
    return _told(SUPER, CombUse.HONEY)


def brood_boxes():
    """The keeper's brood boxes by code, and for every depth and width hives stand in one from wall to wall."""
    sets = _told(BROOD_BOX, CombUse.BROOD)
    told = {(one.depth, one.width) for one in sets}
    wanted = _depths_and_widths() - told
    boxes = list(Part.objects.filter(kind=Kind.BOX, flat=False))
    sets += [
        BoxSet(
            code=f"{BROOD_BOX}{part.depth}-{part.width}",
            name=f"{part.depth} brood box, {part.width} frames",
            box=part,
            frames=part.width or 0,
            use=CombUse.BROOD,
        )
        for part in boxes
        if (part.depth, part.width) in wanted
    ]
    return sorted(sets, key=lambda one: one.code)


def super_of(code):
    """The super of that code; UnknownBox where the keeper has none."""
    return _chosen(supers(), code)


def brood_box_of(code):
    return _chosen(brood_boxes(), code)


def best_for(box_sets, hive_sets):
    """The one that fits most of these hives, the first of equals; None where there is none."""
    return max(box_sets, key=lambda one: sum(map(one.fits, hive_sets)), default=None)


def set_with(hive_set, box_set, number):
    """The keeper's hive set that is this one with so many more boxes; None where they have none."""
    boxes = {f"{depth}_boxes": getattr(hive_set, f"{depth}_boxes") for depth in Depth}
    boxes[f"{box_set.depth}_boxes"] += number
    alike = {name: getattr(hive_set, name) for name in ("width", "base", "cover", "is_nuc")}
    return HiveSet.objects.filter(**boxes, **alike).order_by("code").first()


def _told(prefix, use):
    sets = []
    for gear_set in GearSet.objects.filter(code__startswith=prefix).prefetch_related("lines__part"):
        lines = list(gear_set.lines.all())
        boxes = [line.part for line in lines if line.part.kind == Kind.BOX and not line.part.flat]
        if len(boxes) == 1:
            frames = sum(line.quantity for line in lines if line.part.kind == Kind.FRAME)
            told = {"code": gear_set.code, "name": gear_set.name, "box": boxes[0], "use": use}
            sets.append(BoxSet(frames=frames or boxes[0].width or 0, **told))
    return sets


def _depths_and_widths():
    hive_sets = HiveSet.objects.filter(is_nuc=False)
    return {(depth, one.width) for one in hive_sets for depth in Depth if getattr(one, f"{depth}_boxes") > 0}


def _chosen(box_sets, code):
    chosen = next((one for one in box_sets if one.code == code), None)
    if chosen is None:
        raise UnknownBox(box=code, boxes=", ".join(one.code for one in box_sets) or "none")
    return chosen
