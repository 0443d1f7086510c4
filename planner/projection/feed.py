"""Feed and what is used up: syrup from stores and gallons, patties, treatments, jars and buckets.

Takes living colonies and the crop; gives sugar by yard and week, consumables by driver. Solids and densities from
the published sucrose tables: a gallon of light syrup holds 5.13 lb of sugar, of heavy syrup 7.38 lb.
"""

from planner.projection.records import Consumable, FeedNeed
from planner.season.calendar import circuit_of, period_of

# CRC Handbook and NBS Circular 440: 1.2296 g/mL at 50 %, 1.3265 g/mL at 66.7 %; 8.3454 lb/gal per g/mL.
SUGAR_LB_PER_GALLON = {"1:1": 5.13, "2:1": 7.38}
# Extension rule for heavy syrup: a gallon puts on about 7 lb; light syrup in proportion to its sugar.
STORES_LB_PER_GALLON = {"1:1": 7 * 5.13 / 7.38, "2:1": 7.0}
# How strongly a good or poor flow shows in what a hive holds before feeding: judgement.
STORES_FOLLOW_FLOW = 0.5


def feed_needs(operation, assumptions, standings, splits, scenario, deadouts):
    """Spring feed less deadouts' honey, feed of splits, autumn feed up to the target."""
    honey = sum(found.honey_lb for found in deadouts)  # of winter's deadouts; united colonies keep theirs
    weeks = assumptions.weeks
    spring_week = period_of(assumptions.start, weeks, assumptions.spring_week)
    autumn_week = period_of(assumptions.start, weeks, assumptions.autumn_feed_week)
    spring = _in_spring(operation, assumptions, standings, spring_week, honey)
    of_splits = _of_splits(assumptions, splits)
    autumn = _in_autumn(operation, assumptions, standings, splits, scenario, autumn_week)
    return (*spring, *of_splits, *autumn)


def autumn_gallons(assumptions, year_flow):
    """Gallons that fill one colony's stores up to the target after a year of that flow."""
    follow = 1 + STORES_FOLLOW_FLOW * (year_flow - 1)
    missing = assumptions.stores_target_lb - assumptions.stores_before_feeding_lb * follow
    return max(0.0, missing) / STORES_LB_PER_GALLON[assumptions.autumn_syrup]


def _in_spring(operation, assumptions, standings, week, honey_lb):
    alive = _alive(standings, week)
    wanted = sum(alive.values()) * assumptions.spring_feed_gal
    saved = honey_lb / STORES_LB_PER_GALLON[assumptions.spring_syrup]
    gallons = max(0.0, wanted - saved) / max(1, sum(alive.values()))
    return _by_yard(operation, assumptions, "spring", week, alive, gallons, assumptions.spring_syrup)


def _of_splits(assumptions, splits):
    gallons = assumptions.split_feed_gal
    sugar = gallons * SUGAR_LB_PER_GALLON[assumptions.spring_syrup]
    return [
        FeedNeed(
            yard=split.yard,
            season="splits",
            week=split.week,
            colonies=split.attempts,
            gallons=gallons,
            sugar_lb=sugar,
        )
        for split in splits
        if gallons > 0
    ]


def _in_autumn(operation, assumptions, standings, splits, scenario, week):
    alive = _alive(standings, week)
    for split in splits:
        for code in split.homes:
            alive[code] = alive.get(code, 0) + split.at(code, week)
    gallons = autumn_gallons(assumptions, scenario.year_flow)
    return _by_yard(operation, assumptions, "autumn", week, alive, gallons, assumptions.autumn_syrup)


def _alive(standings, week):
    alive: dict = {}
    for standing in standings:
        alive[standing.yard] = alive.get(standing.yard, 0) + standing.at(week)
    return alive


def _by_yard(operation, assumptions, season, week, alive, gallons, syrup):
    if gallons <= 0:
        return []
    yards = operation.yards_by_code
    return [
        FeedNeed(
            yard=code,
            season=season,
            week=circuit_of(yards[code], assumptions).after(week),
            colonies=count,
            gallons=gallons,
            sugar_lb=gallons * SUGAR_LB_PER_GALLON[syrup],
        )
        for code, count in sorted(alive.items())
        if count
    ]


def consumables(operation, assumptions, colonies_by_week, crop_lb, crop_week):
    """Patties and treatments by colony, jars and buckets by lb. Boxes' and frames' small things go with assembly."""
    known = {part.code for part in operation.parts}
    weeks = assumptions.weeks
    spring = period_of(assumptions.start, weeks, assumptions.spring_week)
    treated = period_of(assumptions.start, weeks, assumptions.treatment_week)
    jars = crop_lb * assumptions.jar_share / assumptions.jar_lb
    in_buckets = crop_lb * (1 - assumptions.jar_share) / assumptions.bucket_lb
    buckets = in_buckets * (1 - assumptions.bucket_returns_share)
    rows = [
        ("patty", "colonies", spring, colonies_by_week[spring] * assumptions.patty_lb),
        ("treatment", "colonies", treated, colonies_by_week[treated] * assumptions.treatments),
        ("jar", "honey in jars", crop_week, jars),
        ("bucket", "honey in buckets", crop_week, buckets),
    ]
    return tuple(
        Consumable(part=part, driver=driver, week=week, quantity=quantity)
        for part, driver, week, quantity in rows
        if quantity > 0 and part in known
    )
