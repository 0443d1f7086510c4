"""Which parts a colony, a super, a split needs: hive sets and answers turned into part codes.

Takes an operation and assumptions; gives bundles {part: pieces}. Widths never mix, combs go by depth.
"""

from dataclasses import dataclass
from functools import cached_property

from planner.projection.project import home_set
from planner.season.assumptions import Assumptions
from planner.season.operation import Operation

PALLET = "pallet-4"
COLONIES_ON_A_PALLET = 4
NUC_COMBS = 5


def plain(code):
    """The part a piece is planned as: comb of treated colonies never takes honey for sale, but serves the brood."""
    if not code.endswith("-treated"):
        return code
    return code.removesuffix("-treated").replace("-honey", "-brood")


def box(depth, width):
    return f"box-{depth}-{width}"


def comb(depth, use):
    return f"comb-{depth}-{use}"


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
    def usual_single(self):
        """Code of the set with one brood box that most colonies stand in."""
        counts: dict = {}
        for group in self.operation.colonies:
            facts = self.sets[group.hive_set]
            if not facts.is_nuc and sum(facts.boxes.values()) == 1:
                counts[facts.code] = counts.get(facts.code, 0) + group.colonies
        return max(sorted(counts), key=lambda code: counts[code]) if counts else self.home.code

    @cached_property
    def base_depth(self):
        """Depth of the lowest brood box at home: the deepest there is."""
        return next(depth for depth in ("deep", "medium", "shallow") if depth in self.home.boxes)

    @cached_property
    def second_depth(self):
        """Depth of the second brood box at home."""
        if self.home.boxes.get(self.base_depth, 0) > 1 or len(self.home.boxes) == 1:
            return self.base_depth
        return next(depth for depth in self.home.boxes if depth != self.base_depth)

    def super_bundle(self, width):
        """A super: box and honey combs, spaced as the keeper hangs them."""
        depth = self.assumptions.super_depth
        combs = width - (10 - self.assumptions.combs_in_super)
        return {box(depth, width): 1, comb(depth, "honey"): max(1, combs)}

    def brood_box_bundle(self, set_code=None):
        """A second brood box with its combs, for the set it goes on."""
        facts = self.sets.get(set_code, self.home)
        only = next(iter(facts.boxes))
        depth = self.second_depth if only == self.base_depth else only
        return {box(depth, facts.width): 1, comb(depth, "brood"): facts.width}

    def hive_bundle(self):
        """A new hive at home: one brood box with combs, and what it stands on and is covered with."""
        keep_box, keep_comb = box(self.base_depth, self.home.width), comb(self.base_depth, "brood")
        bundle: dict = {}
        for part, pieces in self.home.gear.items():
            facts = self.parts.get(part)
            is_box = part.startswith("box-")
            is_comb = facts is not None and facts.kind == "frame"
            if part == keep_box:
                bundle[part] = 1
            elif part == keep_comb:
                bundle[part] = self.home.width
            elif part == PALLET:
                bundle[part] = 1 / COLONIES_ON_A_PALLET
            elif not is_box and not is_comb:
                bundle[part] = pieces
        return bundle

    def nuc_bundle(self):
        """What a split starts in: the nuc set of the home's depth, else a brood box of the home with five combs."""
        for facts in self.operation.sets:
            if facts.is_nuc and self.base_depth in facts.boxes:
                return dict(facts.gear)
        return {**self.hive_bundle(), comb(self.base_depth, "brood"): NUC_COMBS}

    def nuc_to_hive_bundle(self):
        """What an overwintered nuc needs to become a hive: its own combs go along."""
        bundle = self.hive_bundle()
        combs = comb(self.base_depth, "brood")
        bundle[combs] = max(0, bundle.get(combs, 0) - NUC_COMBS)
        return {part: pieces for part, pieces in bundle.items() if pieces}

    def small_part(self, kind, width):
        """Code of the excluder, feeder, guard or reducer of that width, or None."""
        code = f"{kind}-{width}"
        return code if code in self.parts else None

    def set_brings(self, kind, width):
        """True if colonies of that width have the piece as part of their set."""
        groups = [g for g in self.operation.colonies if self.sets[g.hive_set].width == width]
        return bool(groups) and all(f"{kind}-{width}" in self.sets[g.hive_set].gear for g in groups)
