"""Syrup by yard and week, its sugar and when that is bought; patties and treatments that ride along.

Takes projections (bees, gallons); gives what most seasons ask for: rows of feed by each yard's own seasons, sugar by
week of all yards together (they do not all ask for their most in one season) and lots for the truck.
A gallon's sugar is the projection's: 5.13 lb light, 7.38 lb heavy. Syrup is mixed and sugar bought in the week of use.
"""

import math
from collections import defaultdict

import numpy as np

from planner.after.records import FeedRow, SugarRow
from planner.after.stands import colonies_at
from planner.after.targets import MOST, TINY
from planner.plan.needs import chances, quantile
from planner.plan.words import week_day
from planner.projection.feed import SUGAR_LB_PER_GALLON
from planner.season.calendar import circuit_of, period_of


def feed_rows(operation, assumptions, projections):
    """Gallons that nine seasons of ten ask for at most, by yard, week and season of feeding."""
    gallons: dict = defaultdict(lambda: np.zeros(len(projections)))
    colonies: dict = defaultdict(int)
    weights = chances(projections)
    for number, projection in enumerate(projections):
        for need in projection.feed:
            key = need.week, need.yard, need.season
            gallons[key][number] += need.colonies * need.gallons
            colonies[key] = max(colonies[key], need.colonies)
    names = {yard.code: yard.name for yard in operation.yards}
    rows = []
    for key, found in sorted(gallons.items()):
        week, yard, season = key
        ratio = assumptions.autumn_syrup if season == "autumn" else assumptions.spring_syrup
        most = math.ceil(2 * quantile(found, weights, MOST) - TINY) / 2
        if most > 0:
            rows.append(
                FeedRow(
                    week=week,
                    day=week_day(operation.day, week),
                    yard=yard,
                    yard_name=names.get(yard, yard),
                    season=season,
                    colonies=colonies[key],
                    gallons=most,
                    ratio=ratio,
                    sugar_lb=sugar_lb(most, ratio),
                )
            )
    return tuple(rows)


def sugar_lb(gallons, ratio):
    """Whole pounds of sugar in so many gallons, rounded up."""
    return math.ceil(gallons * SUGAR_LB_PER_GALLON[ratio] - TINY)


def sugar_needs(projections):
    """[(week, lb)] of all yards together: by each week's end, what nine seasons of ten have taken at most."""
    weeks = sorted({need.week for projection in projections for need in projection.feed})
    used = np.zeros((len(projections), len(weeks)))
    for number, projection in enumerate(projections):
        for need in projection.feed:
            used[number, weeks.index(need.week) :] += need.colonies * need.sugar_lb
    weights = chances(projections)
    told, before = [], 0
    for week, column in zip(weeks, used.T, strict=True):
        by_then = math.ceil(quantile(column, weights, MOST) - TINY)
        told.append((week, by_then - before))
        before = by_then
    return [(week, pounds) for week, pounds in told if pounds]


def sugar_rows(needs, day, supply):
    """Sugar by week: what is needed, what is on hand of stock and orders, what is bought. Both: [(week, lb)]."""
    told, used = [], 0
    for week, pounds in needs:
        there = int(sum(lb for at, lb in supply if at <= week))
        on_hand = max(0, there - used)
        taken = min(on_hand, pounds)
        used += taken
        told.append(
            SugarRow(
                week=week,
                day=week_day(day, week),
                needed_lb=pounds,
                on_hand_lb=on_hand,
                buy_lb=pounds - taken,
            )
        )
    return tuple(told)


def feed_cargo(rows):
    """yard -> [(week, {(part, full): gallons})]: mixed and brought in the week it is fed."""
    cargo: dict = defaultdict(list)
    for row in rows:
        cargo[row.yard].append((row.week, {(f"syrup-{row.ratio}", False): math.ceil(row.gallons)}))
    return cargo


def bees_cargo(operation, assumptions, projections):
    """yard -> [(week, {(part, full): pieces})]: patties and treatments for the most colonies a season has."""
    answers, known = assumptions, operation.parts_by_code
    wanted = [
        ("patty", answers.spring_week, answers.patty_lb),
        ("treatment", answers.treatment_week, answers.treatments),
    ]
    cargo: dict = defaultdict(list)
    for part, iso_week, each in wanted:
        if part not in known or each <= 0:
            continue
        week = period_of(answers.start, answers.weeks, iso_week)
        for yard in operation.yards:
            at = circuit_of(yard, answers).after(week)
            counts = [colonies_at(projection, yard.code)[week] for projection in projections]
            pieces = math.ceil(max(counts, default=0) * each - TINY)
            if pieces and yard.code != operation.shed:
                cargo[yard.code].append((at, {(part, False): pieces}))
    return cargo
