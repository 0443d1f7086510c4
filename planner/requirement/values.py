"""What it is worth to have gear when it is wanted, in money of the keeper's answers.

Takes needs of the projection; gives money a unit. Constants are judgement unless a source is named beside them.
"""

import math

# A frame drawn from foundation costs honey: 100 g of wax a deep frame at 8.4 lb of honey a lb of wax (Bogdanov,
# Beeswax; Whitcomb 1946) is 1.85 lb; medium and shallow by the boxes' inner volumes.
DRAWING_HONEY_LB = {"deep": 1.85, "medium": 1.27, "shallow": 1.09}

# How much the worst years weigh beside all of them, by the answer to "sooner ten short or thirty idle": judgement. What
# stands idle does so in bad years, so that weighing those more buys less.
BAD_YEARS_WEIGHT = {"idle": 0.0, "rather-idle": 0.1, "either": 0.25, "rather-short": 0.5, "short": 0.8}
BAD_YEARS_SHARE = 0.1

SUPERS_A_TRIP = 40  # what one trip carries beside its other errands
EXCLUDER_MINUTES = 20  # looking for the queen and brood among honey combs, saved
FEEDER_MINUTES = 20  # jars filled and carried a second time, saved
GUARD_SAVES_SHARE = 0.02  # of colonies
REDUCER_SAVES_SHARE = 0.02
SPLIT_WITHOUT_BOX_SHARE = 0.2  # of a split's worth: too small a nest to winter well
RENEWED_COMB_VALUE = 3.0  # an old comb out of the nest, for brood health


def honey_price(assumptions, crop_lb):
    """Average price of a crop: the usual one for what is sold at it, the packer's for the rest."""
    usual = min(crop_lb, assumptions.honey_market_lb)
    if crop_lb <= 0:
        return assumptions.honey_price
    more = crop_lb - usual
    return (usual * assumptions.honey_price + more * assumptions.honey_price_more) / crop_lb


def minutes_value(assumptions, minutes):
    return minutes / 60 * assumptions.hour_value


def round_trip(assumptions, yard):
    """Driving to the yard and home again."""
    return minutes_value(assumptions, 2 * yard.drive_minutes) + 2 * yard.miles * assumptions.mile_cost


def trip_share(assumptions, yard):
    """One super's share of a round trip to the yard."""
    return round_trip(assumptions, yard) / SUPERS_A_TRIP


def super_value(assumptions, yard, honey_lb, price):
    """Honey that would otherwise have nowhere to go, less handling, extracting and the trip."""
    handling = minutes_value(assumptions, assumptions.super_minutes)
    return honey_lb * price - handling - trip_share(assumptions, yard)


def early_pull_cost(assumptions, yard, supers):
    """What a super of a lot costs more that is pulled in mid-flow: the lot's whole trips, shared by its supers, and
    the extractor set up once more. A lot pulled in part is charged its part of the trips."""
    trips = math.ceil(supers / SUPERS_A_TRIP)
    shared = round_trip(assumptions, yard) * trips / supers
    return minutes_value(assumptions, assumptions.pull_early_minutes) + shared


def second_box_value(assumptions, need, price):
    """The share of the crop lost to crowding; for a split at least a share of the colony."""
    crop = need.crop_lb * price * assumptions.crop_lost_without_box
    if need.strength == "split":
        return max(crop, SPLIT_WITHOUT_BOX_SHARE * assumptions.colony_value)
    return crop


def small_gear_value(assumptions, kind):
    """Excluder and feeder save work, guard and reducer save colonies."""
    if kind.startswith("excluder"):
        return minutes_value(assumptions, EXCLUDER_MINUTES)
    if kind == "feeder":
        return minutes_value(assumptions, FEEDER_MINUTES)
    share = GUARD_SAVES_SHARE if kind == "guard" else REDUCER_SAVES_SHARE
    return share * assumptions.colony_value


def drawing_cost(assumptions, depth):
    """Honey that goes into the wax of one frame, at the packer's price: it is the last honey sold."""
    return DRAWING_HONEY_LB[depth] * assumptions.honey_price_more
