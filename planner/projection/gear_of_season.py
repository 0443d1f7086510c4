"""Second brood boxes, comb to renew, and the small gear: excluders, feeders, guards, reducers.

Takes standings, splits and super needs; gives who wants what from week to week.
"""

from planner.projection.records import SecondBox, SmallGear
from planner.projection.splits import nucs_to_sell
from planner.season.calendar import circuit_of, is_ahead, period_of, weeks_since

# A fair colony is ready for its second box two weeks after a strong one, a split six weeks after it is hived;
# a weak colony not at all in time: judgement.
BOX_DELAY_WEEKS = {"strong": 0, "fair": 2}
SPLIT_BOX_DELAY_WEEKS = 6
SPLITS_THAT_GROW = 0.7
# A single is still given its second box, and a nuc of this year its hive, so many weeks after the usual one: judgement.
BOX_LATE_WEEKS = 8
# Feeders go round: a third of the yards at a time, each for two weeks. Judgement.
FEEDER_WEEKS = 2
FEEDER_ROUNDS = 3


def second_boxes(operation, assumptions, standings, splits, homes, crop_by_class):
    """For singles, where they get one at all, and for wintered nucs, that get their hive then. A set that has its
    second box has it on."""
    sets = operation.sets_by_code
    yards = operation.yards_by_code
    week = period_of(assumptions.start, assumptions.weeks, assumptions.second_box_week)
    to_sell = 0 if is_ahead(assumptions, week) else nucs_to_sell(operation, assumptions)
    boxes = []
    for standing in standings:
        facts = sets[standing.hive_set]
        delay = _delay(assumptions, facts, standing.strength)
        if delay is None:
            continue
        due = _due(assumptions, facts, week, delay)
        at = circuit_of(yards[standing.yard], assumptions).before(min(due, assumptions.weeks - 1))
        sold = min(to_sell, standing.at(at)) if facts.is_nuc else 0
        to_sell -= sold
        if standing.at(at) > sold:
            boxes.append(
                SecondBox(
                    yard=standing.yard,
                    strength=standing.strength,
                    set_code=facts.code,
                    week=at,
                    colonies=standing.at(at) - sold,
                    crop_lb=crop_by_class.get((standing.yard, standing.strength), 0.0),
                )
            )
    if not assumptions.second_box:
        return tuple(boxes)
    return (*boxes, *_split_boxes(assumptions, splits, yards, homes, crop_by_class))


def _due(assumptions, facts, week, delay):
    """The week of the box; where the season passed it a while ago, at once, and nucs of this year as they grow up."""
    if is_ahead(assumptions, week):
        return week + delay
    if facts.is_nuc:
        return assumptions.weeks_in_nuc // 2
    gone = weeks_since(assumptions, assumptions.second_box_week)
    return max(0, delay - gone) if gone <= BOX_LATE_WEEKS else week + delay


def _delay(assumptions, facts, strength):
    """Weeks after the usual one, or None for colonies that get no box."""
    if facts.is_nuc:
        return 0
    if not assumptions.second_box or sum(facts.boxes.values()) != 1:
        return None
    return BOX_DELAY_WEEKS.get(strength)


def _split_boxes(assumptions, splits, yards, homes, crop_by_class):
    """Those that die in a winter within the year keep theirs only until they are found."""
    hived: dict = {}
    for split in splits:
        week = split.hive_week + SPLIT_BOX_DELAY_WEEKS
        for code in split.homes:
            count, dying, found = hived.get((code, week), (0, 0, 0))
            if split.found_week is not None and split.found_week > week:
                dying, found = dying + split.dead.get(code, 0), max(found, split.found_week)
            hived[code, week] = count + split.at(code, week), dying, found
    for (code, week), (count, dying, found) in sorted(hived.items()):
        growing = int(count * SPLITS_THAT_GROW + 0.5)
        to_stay = int((count - dying) * SPLITS_THAT_GROW + 0.5)
        for colonies, found_week in ((to_stay, None), (growing - to_stay, found)):
            if colonies and week < assumptions.weeks:
                yield SecondBox(
                    yard=code,
                    strength="split",
                    set_code=homes[code].code,
                    week=circuit_of(yards[code], assumptions).before(week),
                    colonies=colonies,
                    crop_lb=crop_by_class.get((code, "split"), 0.0),
                    found_week=found_week,
                )


def small_gear(operation, assumptions, classes, supers):
    """One piece a colony where the keeper uses it at all."""
    return (
        *(_excluders(supers) if assumptions.excluders else ()),
        *_autumn_gear(operation, assumptions, classes),
    )


def _excluders(supers):
    """Under the first super of a colony, for as long as any of a yard's flows keeps it on."""
    spans: dict = {}
    for need in supers:
        if need.number == 1:
            spans.setdefault((need.yard, need.window, need.width, need.first, need.last), []).append(
                need.colonies
            )
    for (yard, window, width, first, last), counts in sorted(spans.items()):
        yield SmallGear(
            kind=f"excluder/{window}", yard=yard, width=width, first=first, last=last, colonies=sum(counts)
        )


def _autumn_gear(operation, assumptions, classes):
    weeks = assumptions.weeks
    yards = operation.yards_by_code
    spring = period_of(assumptions.start, weeks, assumptions.spring_week)
    starts = {
        "guard": (assumptions.guards, assumptions.guard_week),
        "reducer": (assumptions.reducers, assumptions.autumn_feed_week),
        "feeder": (assumptions.feeders, assumptions.autumn_feed_week),
    }
    rounds = {code: number % FEEDER_ROUNDS for number, code in enumerate(yards)}
    for kind, (used, iso_week) in starts.items():
        week = period_of(assumptions.start, weeks, iso_week)
        counts: dict = {}
        for flow_class in classes:
            key = flow_class.yard, flow_class.width
            counts[key] = counts.get(key, 0) + flow_class.colonies[week]
        for (yard, width), count in sorted(counts.items()):
            first = circuit_of(yards[yard], assumptions).before(week)
            last = spring if spring > week else weeks - 1
            if kind == "feeder":
                first = min(weeks - 1, first + rounds[yard] * FEEDER_WEEKS)
                last = min(weeks - 1, first + FEEDER_WEEKS - 1)
            if used and count:
                yield SmallGear(kind=kind, yard=yard, width=width, first=first, last=last, colonies=count)


def culled_combs(operation, assumptions, standings):
    """Old brood combs taken out of living hives in a year, by depth."""
    sets = operation.sets_by_code
    culled: dict = {}
    for standing in standings:
        facts = sets[standing.hive_set]
        for depth, boxes in facts.boxes.items():
            if not facts.is_nuc:
                combs = standing.after * boxes * assumptions.comb_culled
                culled[depth] = culled.get(depth, 0.0) + combs
    return {depth: combs for depth, combs in culled.items() if combs}
