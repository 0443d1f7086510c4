"""The plan after the order in a few sentences. Takes an AfterSection without them, gives it with them."""

from dataclasses import replace

from planner.after.rooming import trips_words
from planner.plan.words import day_words, listed, number, percent

LATE_BENCH = "the bench is not done sooner"
LATE_COMING = "the gear is not there sooner"
NOWHERE = "neither owned nor in this order: bought in season if the year asks for it, or done without"


def sentences(section):
    hauling = [said for said in _of_hauling(section) if said]
    rest = (section.bench.said, _feed(section), _pulls(section), _stands(section))
    return replace(section, sentences=(*hauling, *(said for said in rest if said)), hauling=len(hauling))


def _of_hauling(section):
    yield enough(section)
    yield in_time(section)
    yield _free(section)
    yield _loads(section)
    yield _shares(section)
    yield _too_large(section)


def _loads(section):
    if not section.loads:
        return "Nothing is to be hauled: what the yards want lies there."
    return (
        f"{number(len(section.loads))} loads within {number(section.truck_lb)} lb and {number(section.truck_cubic_ft)} cubic "
        f"feet; {_extra(section.extra_trips)} A load goes to one yard: the books know the way from home to each yard, not "
        "between them. Where two lie on one round, load them together as far as both fit."
    )


def _shares(section):
    if not section.loads:
        return ""
    return (
        f"Each yard gets what {section.level_in_100} of its seasons in 100 put to use at most. Where that is more than there "
        "is, the yards share by their mean need and the rest waits in the shed for the next visit that is due"
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
    """In how many seasons the hauling plan is enough, and what that means."""
    told = section.fresh or section.planned
    return (
        f"In {told.enough_in_100} seasons of 100 this hauling plan is enough: its trips carry all that the season asks for "
        f"(in {told.trips_in_100}), and no yard waits longer than its next visit while a piece lies idle "
        f"(in {told.in_turn_in_100}). {_tried_on(section)}"
    )


def in_time(section):
    """How much is there when wanted, and where the plan fails first."""
    told = section.fresh or section.planned
    said = (
        f"{percent(told.on_time_share, 0)} of the pieces are at their yard when they are wanted; what a yard is seen to lack "
        "comes on its next visit: load that first."
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
            f" Where a yard waits longer, it is most often {first.yard_name} in the week of {day_words(first.day)}, "
            f"for about {number(first.missing)} × {first.name}."
        )
    return said


def _tried_on(section):
    if section.fresh is None:
        return f"Tried on the {section.planned.seasons} seasons it was planned with."
    return (
        f"Tried on {section.fresh.seasons} fresh seasons; of those it was planned with it is enough in "
        f"{section.planned.enough_in_100} of 100."
    )


def _free(section):
    """Second trips some seasons need."""
    if not section.free:
        return ""
    likely = max(section.free, key=lambda row: row.in_100)
    trips = sum(row.trips for row in section.free)
    return (
        f"Counted with these {'is' if trips == 1 else 'are'} {trips_words(trips)} to keep a day free for, made only in a season that asks for "
        f"{'it' if trips == 1 else 'them'}: most likely to {likely.yard_name} in the week of {day_words(likely.day)}, "
        f"in {likely.in_100} seasons of 100, {likely.what}."
    )


def _too_large(section):
    if not section.too_large:
        return ""
    return (
        f"The truck takes not even one of these, and they are left out of the loads: {listed(section.too_large)}. "
        "Look at the pounds and cubic feet told of your truck."
    )


def _feed(section):
    if not section.feed:
        return ""
    gallons = sum(row.gallons for row in section.feed)
    buy = sum(row.buy_lb for row in section.sugar)
    most = f"{section.level_in_100} seasons in 100 ask for at most"
    said = f"{number(gallons)} gallons of syrup to bring, what each yard's own {most}"
    return (
        f"{said}; {number(buy)} lb of sugar to buy on top of what is there, by what all yards together in {most}, each "
        "lot in the week it is fed."
        if buy
        else f"{said}; the sugar is there for what all yards together in {most}."
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
    kind = "fresh seasons" if section.fresh else "the seasons planned with"
    loads, extra = len(section.loads), section.extra_trips
    return (
        f"{number(loads)} load{'' if loads == 1 else 's'} to haul, {number(extra)} of them extra trips. "
        f"In {told.enough_in_100} seasons of 100 this hauling plan is enough, tried on {kind}.",
        section.bench.said,
    )
