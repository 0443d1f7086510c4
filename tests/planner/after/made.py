"""A section of what follows an order, for pages and workbooks; and a truck with plain boxes. All figures invented."""

import datetime as dt
from types import SimpleNamespace

from planner.after.cargo import Truck
from planner.after.records import (
    AfterSection,
    Bench,
    BenchJob,
    Carried,
    Check,
    Evening,
    FeedRow,
    FirstFull,
    FirstShort,
    KeptFree,
    LateGear,
    Leg,
    Load,
    PullRow,
    StandRow,
    SugarRow,
)
from planner.season.operation import PartFacts

DAY = dt.date(2027, 1, 15)
MEDIUM, COMB = "box-medium-10", "comb-medium-honey"


def week(number):
    return DAY + dt.timedelta(weeks=number)


def part(code, kind, lb, **traits):
    return PartFacts(code=code, name=code.replace("-", " "), kind=kind, weight_lb=lb, **traits)


PARTS = (
    part(MEDIUM, "box", 5.0, depth="medium", width=10),
    part(COMB, "frame", 0.5, depth="medium", comb="drawn", comb_use="honey"),
    part("excluder-10", "excluder", 1.8, width=10),
    part("sugar", "feed", 1.0, unit="lb"),
)


def truck(lb=1000, cubic_ft=50):
    by_code = {each.code: each for each in PARTS}
    return Truck(SimpleNamespace(truck_lb=lb, truck_cubic_ft=cubic_ft, parts=PARTS, parts_by_code=by_code))


def carried(code, pieces, *, full=False, unit="piece"):
    return Carried(part=code, name=code.replace("-", " "), unit=unit, pieces=pieces, full=full)


def leg(*rows, lb=0, cubic_ft=0.0):
    return Leg(carried=rows, lb=lb, cubic_ft=cubic_ft)


def load(number, at, yard, *, rides="visit", out=None, home=None):
    return Load(
        number=number,
        week=at,
        day=week(at),
        yard=yard,
        yard_name=yard.replace("-", " ").capitalize(),
        rides=rides,
        out=out or leg(),
        home=home or leg(),
    )


def job(**changed):
    usual = {
        "recipe": "assemble-box-medium-10",
        "name": "assemble a medium box",
        "pieces": 20,
        "minutes_each": 14.0,
        "gear_there_on": week(3),
        "wanted_on": week(16),
        "start_by": week(13),
        "done_on": week(5),
        "late_pieces": 0,
    }
    return BenchJob(**{**usual, **changed})


def bench(**changed):
    evening = Evening(
        week=3, day=week(3), evening=1, recipe="assemble-box-medium-10", name="assemble a medium box",
        pieces=8.6, minutes=120.0,
    )  # fmt: skip
    usual = {
        "evenings_a_week": 2.0,
        "evening_hours": 2.0,
        "jobs": (job(),),
        "evenings": (evening,),
        "minutes": 280.0,
        "begin_by": week(13),
        "said": "5 hours at the bench, all done in time.",
    }
    return Bench(**{**usual, **changed})


def checks():
    """Held against the seasons planned with, and against fresh ones."""
    short = FirstShort(yard_name="Mill race", name="medium box", week=20, day=week(20), in_100=6, missing=4)
    full = FirstFull(
        yard_name="Mill race", what="full supers to take home", week=28, day=week(28), in_100=8, trips=1
    )
    planned = Check(
        seasons=100, enough_in_100=92, as_loaded_in_100=20, on_time_share=0.96, trips_in_100=94, in_turn_in_100=97
    )  # fmt: skip
    fresh = Check(
        seasons=40, enough_in_100=90, as_loaded_in_100=18, on_time_share=0.95, trips_in_100=93, in_turn_in_100=96,
        full=(full,), short=(short,),
    )  # fmt: skip
    return {"planned": planned, "fresh": fresh}


def loads():
    out = leg(carried(MEDIUM, 30), carried(COMB, 270), lb=285, cubic_ft=40.8)
    home = leg(carried(MEDIUM, 16, full=True), carried(COMB, 144), lb=960, cubic_ft=21.8)
    return (
        load(1, 16, "mill-race", out=out),
        load(2, 28, "mill-race", home=home),
        load(3, 28, "upper-meadow", rides="extra trip", home=home),
    )


def at_mill_race(kind, at=None, **told):
    """A row of the section about one yard, in a week where it has one."""
    when = {} if at is None else {"week": at, "day": week(at)}
    return kind(yard="mill-race", yard_name="Mill race", **when, **told)


def late():
    return (
        at_mill_race(
            LateGear, part="nuc-box-5", name="nuc box", pieces=3, wanted_on=week(16), comes_on=week(18),
            why="the gear is not there sooner",
        ),
        at_mill_race(
            LateGear, part="cover-10", name="cover", pieces=2, wanted_on=week(18), comes_on=None,
            why="neither owned nor in this order",
        ),
    )  # fmt: skip


def section(**changed):
    feed = at_mill_race(FeedRow, 34, season="autumn", colonies=12, gallons=36.0, ratio="2:1", sugar_lb=266)
    pull = at_mill_race(PullRow, 28, supers=16, mean=14.5, hours=6.7, extracted_by=week(29))
    usual = {
        "level_in_100": 90,
        "truck_lb": 1000,
        "truck_cubic_ft": 50,
        "sentences": (
            "3 loads; 1 is an extra trip.",
            "In 90 seasons of 100 this hauling plan is enough.",
        ),
        **checks(),
        "bench": bench(),
        "loads": loads(),
        "late": late(),
        "feed": (feed,),
        "sugar": (SugarRow(week=34, day=week(34), needed_lb=266, on_hand_lb=50, buy_lb=216),),
        "pulls": (pull,),
        "stands": (at_mill_race(StandRow, 22, stands=12, colonies=14, in_100=12),),
        "free": (at_mill_race(KeptFree, 28, what="full supers to take home", trips=1, in_100=15),),
    }
    return AfterSection(**{**usual, **changed})
