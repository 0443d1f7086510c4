"""The plan after the order in a few sentences. Takes an AfterSection without them, gives it with them."""

from dataclasses import replace

from planner.after.rooming import trips_words
from planner.plan.words import day_words, listed, number, percent

LATE_BENCH = "the bench is not done sooner"
LATE_COMING = "the gear is not there sooner"
NOWHERE = "neither owned nor in this order: bought in season if the year asks for it, or done without"


def sentences(section):
    return replace(section, sentences=tuple(said for said in _all(section) if said))


def _all(section):
    yield _loads(section)
    yield enough(section)
    yield section.bench.said
    yield _feed(section)
    yield _pulls(section)
    yield _stands(section)


def _loads(section):
    if not section.loads:
        return "Nothing is to be hauled: what the yards want lies there."
    extra = section.extra_trips
    return (
        f"{number(len(section.loads))} loads within {number(section.truck_lb)} lb and {number(section.truck_cubic_ft)} cubic "
        f"feet; {_extra(extra)} A load goes to one yard: the books know the way from home to each yard, not between them. "
        f"All yards together get what {section.level_in_100} seasons of 100 put to use at most, each its share of the mean need"
        f"{_in_season(section.in_season)}."
    )


def _in_season(pieces):
    return (
        f"; {number(pieces)} pieces of it are bought in season, once the year shows its need"
        if pieces
        else ""
    )


def _extra(extra):
    if not extra:
        return "all ride on visits that are due anyway."
    return f"{number(extra)} {'is an extra trip' if extra == 1 else 'are extra trips'}, the rest rides on visits that are due anyway."


def enough(section):
    """In how many seasons the trips are enough, and how far the loads are."""
    planned, fresh = section.planned, section.fresh
    said = f"In {planned.enough_in_100} of 100 seasons planned these trips are enough"
    if fresh is not None:
        said += f", in {fresh.enough_in_100} of 100 fresh ones"
    told = fresh or planned
    said += (
        f"; as loaded here {percent(told.on_time_share, 1)} of what a season puts to use is there in time."
    )
    full = next(iter(told.full), None)
    if full is not None:
        said += (
            f" Where the trips are not enough, it is most often at {full.yard_name} in the week of {day_words(full.day)}, "
            f"by {trips_words(full.trips)}: {full.what}."
        )
    first = next(iter(told.short), None)
    if first is not None:
        said += (
            f" A season that wants more than is loaded runs short first, most often, at {first.yard_name} in the week of "
            f"{day_words(first.day)}, by about {number(first.missing)} × {first.name}: load what that season asks for."
        )
    return said


def _feed(section):
    if not section.feed:
        return ""
    gallons = sum(row.gallons for row in section.feed)
    buy = sum(row.buy_lb for row in section.sugar)
    said = f"{number(gallons)} gallons of syrup"
    return (
        f"{said}; {number(buy)} lb of sugar to buy, each lot in the week it is fed."
        if buy
        else f"{said}, the sugar for it is there."
    )


def _pulls(section):
    if not section.pulls:
        return ""
    supers, hours = sum(row.supers for row in section.pulls), sum(row.hours for row in section.pulls)
    return f"{number(supers)} supers to pull and extract, {number(hours)} hours by your own minutes a super."


def _stands(section):
    if not section.stands:
        return ""
    yards = [
        f"{row.yard_name} ({row.colonies} on {row.stands} in the week of {day_words(row.day)})"
        for row in section.stands
    ]
    return f"More colonies than stands: {listed(yards)}. Move or sell some, or add stands; splits in nucs not counted."


def two_lines(section):
    """What a terminal is told: loads with the check, and the bench."""
    told = section.fresh or section.planned
    kind = "fresh seasons" if section.fresh else "seasons planned with"
    loads, extra = len(section.loads), section.extra_trips
    return (
        f"{number(loads)} load{'' if loads == 1 else 's'} to haul, {number(extra)} of them extra trips; these trips are "
        f"enough in {told.enough_in_100} of 100 {kind}.",
        section.bench.said,
    )
