"""Which parts a colony, a super, a split needs: hive sets and answers turned into part codes.

Takes an operation and assumptions; gives bundles {part: pieces}. Widths never mix, combs go by depth.
"""

from dataclasses import dataclass
from functools import cached_property, lru_cache

from planner.projection.colonies import COLONIES_ON_A_PALLET, PALLET
from planner.projection.homes import home_set, split_homes
from planner.season.assumptions import Assumptions
from planner.season.operation import Operation

NUC_COMBS = 5


@lru_cache(maxsize=1024)
def plain(code):
    """The part a piece is planned as: comb of treated colonies never takes honey for sale, but serves the brood."""
    if not code.endswith("-treated"):
        return code
    return code.removesuffix("-treated").replace("-honey", "-brood")


def box(depth, width):
    return f"box-{depth}-{width}"


def comb(depth, use):
    return f"comb-{depth}-{use}"


def base_depth(facts):
    """Depth of a set's lowest brood box: the deepest there is."""
    return next(depth for depth in ("deep", "medium", "shallow") if depth in facts.boxes)


def upper_boxes(facts):
    """depth -> boxes above the lowest."""
    upper = dict(facts.boxes)
    upper[base_depth(facts)] -= 1
    return {depth: boxes for depth, boxes in upper.items() if boxes}


@dataclass(frozen=True, kw_only=True)
class SeasonGear:
    """The operation and the answers, asked for gear."""

    operation: Operation
    assumptions: Assumptions

    @cached_property
    def sets(self):
        return {facts.code: facts for facts in self.operation.sets}

    @cached_property
    def yards(self):
        return {yard.code: yard for yard in self.operation.yards}

    @cached_property
    def parts(self):
        return {part.code: part for part in self.operation.parts}

    @cached_property
    def home(self):
        return home_set(self.operation)

    @cached_property
    def homes(self):
        """yard code -> the set its splits are hived in."""
        return split_homes(self.operation, self.assumptions)

    def home_at(self, yard=None):
        return self.homes.get(yard, self.home)

    @cached_property
    def usual_single(self):
        """Code of the set with one brood box that most colonies stand in."""
        counts: dict = {}
        for group in self.operation.colonies:
            facts = self.sets[group.hive_set]
            if not facts.is_nuc and sum(facts.boxes.values()) == 1:
                counts[facts.code] = counts.get(facts.code, 0) + group.colonies
        return max(sorted(counts), key=lambda code: counts[code]) if counts else self.home.code

    @cached_property
    def brood_depths(self):
        """Depths of brood boxes at any home, and of those that go on singles."""
        homes = {facts.code: facts for facts in (*self.homes.values(), self.home)}.values()
        return {depth for facts in homes for depth in facts.boxes}

    @cached_property
    def _known(self):
        return {}

    def _once(self, key, worked_out):
        """What was asked for before: every scenario asks for the same."""
        if key not in self._known:
            self._known[key] = worked_out()
        return self._known[key]

    def super_bundle(self, width):
        """A super: box and honey combs, spaced as the keeper hangs them."""
        return self._once(("super", width), lambda: self._super(width))

    def _super(self, width):
        depth = self.assumptions.super_depth
        combs = width - (10 - self.assumptions.combs_in_super)
        return {box(depth, width): 1, comb(depth, "honey"): max(1, combs)}

    def brood_box_bundle(self, set_code=None, yard=None):
        """The boxes that go on a first brood box, with their combs: the rest of the set, or of a single's home."""
        return self._once(("second", set_code, yard), lambda: self._brood_box(set_code, yard))

    def _brood_box(self, set_code, yard):
        home = self.home_at(yard)
        facts = self.sets.get(set_code, home)
        upper = upper_boxes(facts) or self._second_of(facts, home)
        bundle: dict = {}
        for depth, boxes in upper.items():
            bundle[box(depth, facts.width)] = boxes
            bundle[comb(depth, "brood")] = boxes * facts.width
        return bundle

    def _second_of(self, facts, home):
        """A single's second box: as at home where that has two like it below, else like its first."""
        only = base_depth(facts)
        upper = upper_boxes(home)
        depth = next(iter(upper)) if upper and base_depth(home) == only else only
        return {depth: 1}

    def hive_bundle(self, yard=None):
        """A new hive at home: one brood box with combs, and what it stands on and is covered with."""
        return self._once(("hive", yard), lambda: self._hive(yard))

    def _hive(self, yard):
        home = self.home_at(yard)
        depth = base_depth(home)
        bundle: dict = {box(depth, home.width): 1, comb(depth, "brood"): home.width}
        for part, pieces in home.gear.items():
            facts = self.parts.get(part)
            if part == PALLET:
                bundle[part] = 1 / COLONIES_ON_A_PALLET
            elif not part.startswith("box-") and (facts is None or facts.kind != "frame"):
                bundle[part] = pieces
        return bundle

    def nuc_bundle(self, yard=None):
        """What a split starts in: the nuc set of the home's depth, else a brood box of the home with five combs."""
        depth = base_depth(self.home_at(yard))
        for facts in self.operation.sets:
            if facts.is_nuc and depth in facts.boxes:
                return dict(facts.gear)
        return {**self.hive_bundle(yard), comb(depth, "brood"): NUC_COMBS}

    def nuc_to_hive_bundle(self, yard=None):
        """What an overwintered nuc needs to become a hive: its own combs go along."""
        bundle = dict(self.hive_bundle(yard))
        combs = comb(base_depth(self.home_at(yard)), "brood")
        bundle[combs] = max(0, bundle.get(combs, 0) - NUC_COMBS)
        return {part: pieces for part, pieces in bundle.items() if pieces}

    def small_part(self, kind, width):
        """Code of the excluder, feeder, guard or reducer of that width, or None."""
        code = f"{kind}-{width}"
        return code if code in self.parts else None

    def set_brings(self, kind, width):
        """True if colonies of that width have the piece as part of their set."""
        return self._once(("brings", kind, width), lambda: self._brings(kind, width))

    def _brings(self, kind, width):
        groups = [g for g in self.operation.colonies if self.sets[g.hive_set].width == width]
        return bool(groups) and all(f"{kind}-{width}" in self.sets[g.hive_set].gear for g in groups)
