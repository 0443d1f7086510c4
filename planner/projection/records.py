"""What a season asks for in one scenario, still in bees and honey: the projection's records."""

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True, kw_only=True, slots=True)
class Deadouts:
    """Colonies of one yard, set and strength lost, and why (winter, summer, united); gear: held = returned + lost."""

    yard: str
    hive_set: str
    strength: str
    week: int
    colonies: int
    held: Mapping[str, int]
    returned: Mapping[str, int]
    lost: Mapping[str, int]
    honey_lb: float
    why: str = "winter"


@dataclass(frozen=True, kw_only=True, slots=True)
class Splits:
    """One yard's splits. kept + sold = made ≤ attempts; `kept` stand in `homes` by yard code.

    Where a winter follows within the year, `dead` of them are found at `found_week`, by yard code.
    """

    yard: str
    week: int
    hive_week: int
    attempts: int
    made: int
    sold: int
    homes: Mapping[str, int] = field(default_factory=dict)
    dead: Mapping[str, int] = field(default_factory=dict)
    found_week: int | None = None

    def at(self, home, week):
        """Splits that live in that yard in that week."""
        if week < self.hive_week:
            return 0
        gone = self.dead.get(home, 0) if self.found_week is not None and week >= self.found_week else 0
        return self.homes.get(home, 0) - gone

    def by_week(self, home, weeks):
        """The same for each week."""
        found = weeks if self.found_week is None else max(self.hive_week, self.found_week)
        living = self.homes.get(home, 0)
        counts = [0] * self.hive_week + [living] * (weeks - self.hive_week)
        counts[found:] = [living - self.dead.get(home, 0)] * (weeks - found)
        return counts

    @property
    def kept(self):
        return self.made - self.sold


@dataclass(frozen=True, kw_only=True, slots=True)
class SecondBox:
    """Colonies of a yard that should get their second brood box in `week`; `set_code` tells which box.

    `found_week`: where a winter within the year takes them, the week they are found in.
    """

    yard: str
    strength: str
    set_code: str
    week: int
    colonies: int
    crop_lb: float  # what a colony of them gathers in the year
    found_week: int | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class SuperNeed:
    """The `number`-th super of alike colonies: on from week `first` until extracted at the end of week `last`."""

    yard: str
    window: str
    strength: str
    width: int
    number: int
    first: int
    last: int
    colonies: int
    honey_lb: float  # a colony, that would otherwise have nowhere to go
    early_last: int | None = None  # pulled in mid-flow once full: extracted at the end of this week


@dataclass(frozen=True, kw_only=True, slots=True)
class FeedNeed:
    """Syrup for colonies of one yard; sugar in lb a colony, deadouts' honey taken off."""

    yard: str
    season: str  # spring, splits, autumn
    week: int
    colonies: int
    gallons: float
    sugar_lb: float


@dataclass(frozen=True, kw_only=True, slots=True)
class SmallGear:
    """One piece a colony from week first to last: excluder, feeder, guard, reducer."""

    kind: str
    yard: str
    width: int
    first: int
    last: int
    colonies: int


@dataclass(frozen=True, kw_only=True, slots=True)
class Consumable:
    """What is used up by a driver: so many of a part in a week."""

    part: str
    driver: str
    week: int
    quantity: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Drawing:
    """Frames the colonies can draw in a flow, from `week` to `last`; what is not drawn by then is gone."""

    window: str
    week: int
    last: int
    frames: int


@dataclass(frozen=True, kw_only=True, slots=True)
class Projection:
    """One scenario worked out. `colonies`: (yard, strength) -> living colonies by week."""

    code: str
    probability: float
    colonies: Mapping[tuple[str, str], tuple[int, ...]]
    deadouts: tuple[Deadouts, ...]
    splits: tuple[Splits, ...]
    second_boxes: tuple[SecondBox, ...]
    supers: tuple[SuperNeed, ...]
    feed: tuple[FeedNeed, ...]
    small_gear: tuple[SmallGear, ...]
    consumables: tuple[Consumable, ...]
    drawing: tuple[Drawing, ...]
    culled_combs: Mapping[str, float]  # depth -> brood combs to renew
    crop_lb: float  # if every super wanted is there

    def total(self, week):
        """Living colonies in all yards in that week."""
        return sum(counts[week] for counts in self.colonies.values())
