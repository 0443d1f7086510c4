"""What follows the order, as the report keeps it: loads, workbench, feed, pulls, stands, and how far it is enough.

Immutable records with plain values, written and read by planner/plan/json_form.py. Weeks count from the day of the
order; weights lb, room cubic feet, work minutes. No money in it: who loads the truck may read all of it.
"""

import datetime as dt
from dataclasses import dataclass

VISIT, EXTRA = "visit", "extra trip"


@dataclass(frozen=True, kw_only=True)
class Carried:
    """So many pieces of a part on the truck; `full`: boxes full of honey."""

    part: str
    name: str
    unit: str
    pieces: int
    full: bool = False


@dataclass(frozen=True, kw_only=True)
class Leg:
    """One way of a trip: out to the yard, or home."""

    carried: tuple[Carried, ...]
    lb: int
    cubic_ft: float


@dataclass(frozen=True, kw_only=True)
class Load:
    """One trip to one yard, out and home. `rides`: on a visit that is due anyway, or an extra trip."""

    number: int
    week: int
    day: dt.date
    yard: str
    yard_name: str
    rides: str
    out: Leg
    home: Leg


@dataclass(frozen=True, kw_only=True)
class LateGear:
    """Pieces that are not at the yard when most seasons want them; `comes_on` None: nowhere to be had."""

    yard: str
    yard_name: str
    part: str
    name: str
    pieces: int
    wanted_on: dt.date
    comes_on: dt.date | None
    why: str


@dataclass(frozen=True, kw_only=True)
class BenchJob:
    """Pieces of one kind to be assembled: when the gear is there, when they are wanted, when they are done."""

    recipe: str
    name: str
    pieces: int
    minutes_each: float
    gear_there_on: dt.date
    wanted_on: dt.date
    start_by: dt.date | None  # the latest start that is still in time; None: none is
    done_on: dt.date | None  # None: not within the year
    late_pieces: int


@dataclass(frozen=True, kw_only=True)
class Evening:
    """One evening's work on one recipe."""

    week: int
    day: dt.date  # first day of the week
    evening: int
    recipe: str
    name: str
    pieces: float  # begun ones told in parts
    minutes: float


@dataclass(frozen=True, kw_only=True)
class Bench:
    """The workbench over the year."""

    evenings_a_week: float
    evening_hours: float
    jobs: tuple[BenchJob, ...]
    evenings: tuple[Evening, ...]
    minutes: float  # all of it
    begin_by: (
        dt.date | None
    )  # latest start of the whole, None: it cannot be done in time, or nothing is to do
    said: str


@dataclass(frozen=True, kw_only=True)
class FeedRow:
    """Syrup for one yard in one week; the sugar for it is bought in that week."""

    week: int
    day: dt.date
    yard: str
    yard_name: str
    season: str
    colonies: int
    gallons: float
    ratio: str
    sugar_lb: int


@dataclass(frozen=True, kw_only=True)
class SugarRow:
    """What a week's syrup takes, what is there and what is bought then."""

    week: int
    day: dt.date
    needed_lb: int
    on_hand_lb: int
    buy_lb: int


@dataclass(frozen=True, kw_only=True)
class PullRow:
    """Supers taken off a yard in one visit, and the work they bring."""

    week: int
    day: dt.date
    yard: str
    yard_name: str
    supers: int
    mean: float
    hours: float
    extracted_by: dt.date


@dataclass(frozen=True, kw_only=True)
class StandRow:
    """A yard that some season fills beyond its stands."""

    yard: str
    yard_name: str
    stands: int
    colonies: int  # what nine seasons of ten have at most; of the fullest where those find room
    week: int
    day: dt.date
    in_100: int


@dataclass(frozen=True, kw_only=True)
class FirstShort:
    """Where a season's yard waits longer than its next visit first."""

    yard_name: str
    name: str
    week: int
    day: dt.date
    in_100: int
    missing: int  # mean of those seasons


@dataclass(frozen=True, kw_only=True)
class FirstFull:
    """Where a season asks first for more than the planned trips carry."""

    yard_name: str
    what: str  # gear to bring, full supers to take home
    week: int
    day: dt.date
    in_100: int
    trips: int  # missing, mean of those seasons, rounded up


@dataclass(frozen=True, kw_only=True)
class KeptFree:
    """Trips to keep a day free for: a yard's pull that some seasons make too much for its visit."""

    yard: str
    yard_name: str
    what: str
    week: int
    day: dt.date
    trips: int
    in_100: int  # seasons that need one or more of them


@dataclass(frozen=True, kw_only=True)
class Check:
    """The plan held against many seasons."""

    seasons: int
    enough_in_100: int  # both of the next two
    as_loaded_in_100: int  # all is there in time
    on_time_share: float  # of all pieces the seasons put to use at yards
    trips_in_100: int = 0  # the trips, those kept free with them, carry all the season asks for
    in_turn_in_100: int = 0  # no yard waits longer than its next visit
    full: tuple[FirstFull, ...] = ()
    short: tuple[FirstShort, ...] = ()


@dataclass(frozen=True, kw_only=True)
class AfterSection:
    level_in_100: int  # each yard's need in so many seasons of 100 is planned for
    truck_lb: int
    truck_cubic_ft: int
    sentences: tuple[str, ...]
    planned: Check
    bench: Bench
    fresh: Check | None = None
    in_season: int = 0  # pieces of it that are bought in season, in most seasons
    loads: tuple[Load, ...] = ()
    late: tuple[LateGear, ...] = ()
    feed: tuple[FeedRow, ...] = ()
    sugar: tuple[SugarRow, ...] = ()
    pulls: tuple[PullRow, ...] = ()
    stands: tuple[StandRow, ...] = ()
    free: tuple[KeptFree, ...] = ()
    hauling: int = 2  # so many of the sentences, the first ones, are about loads
    too_large: tuple[str, ...] = ()  # what the truck takes not even one of, left out of the loads

    @property
    def extra_trips(self):
        return sum(load.rides == EXTRA for load in self.loads)
