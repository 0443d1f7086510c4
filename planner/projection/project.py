"""One scenario of the season worked out, week by week: the pipeline of the projection.

Takes the operation, the assumptions and a scenario; gives a Projection. Same in, same out.
"""

from planner.projection.colonies import deadouts, standing_colonies
from planner.projection.feed import consumables, feed_needs
from planner.projection.flow import FlowClass, drawing, super_needs
from planner.projection.gear_of_season import culled_combs, second_boxes, small_gear
from planner.projection.records import Projection
from planner.projection.splits import splits
from planner.season.calendar import period_of


def project(operation, assumptions, scenario):
    """Colonies, deadouts, splits, boxes, supers, feed and consumables of one way the year may go."""
    standings = standing_colonies(operation, assumptions, scenario)
    dead = deadouts(operation, assumptions, standings)
    made = splits(operation, assumptions, standings, scenario)
    home = home_set(operation)
    classes = flow_classes(operation, assumptions, standings, made, home)
    supers, crop_lb, by_class = super_needs(operation, assumptions, classes, scenario)
    living: dict = {}
    for flow_class in classes:
        before = living.get((flow_class.yard, flow_class.strength), (0,) * assumptions.weeks)
        together = tuple(a + b for a, b in zip(before, flow_class.colonies, strict=True))
        living[flow_class.yard, flow_class.strength] = together
    by_week = [sum(counts[week] for counts in living.values()) for week in range(assumptions.weeks)]
    crop_week = max((need.last for need in supers), default=0)
    return Projection(
        code=scenario.code,
        probability=scenario.probability,
        colonies=living,
        deadouts=dead,
        splits=made,
        second_boxes=tuple(second_boxes(operation, assumptions, standings, made, home, by_class)),
        supers=supers,
        feed=feed_needs(operation, assumptions, standings, made, scenario, dead),
        small_gear=tuple(small_gear(operation, assumptions, classes, supers)),
        consumables=consumables(operation, assumptions, by_week, crop_lb, crop_week),
        drawing=drawing(operation, assumptions, classes),
        culled_combs=culled_combs(operation, assumptions, standings),
        crop_lb=crop_lb,
    )


def home_set(operation):
    """The set most colonies stand in, nucs apart: what a split is hived in, less its upper boxes."""
    sets = {facts.code: facts for facts in operation.sets}
    counts: dict = {}
    for group in operation.colonies:
        if not sets[group.hive_set].is_nuc:
            counts[group.hive_set] = counts.get(group.hive_set, 0) + group.colonies
    if counts:
        return sets[max(sorted(counts), key=lambda code: counts[code])]
    return next((facts for facts in operation.sets if not facts.is_nuc), None)


def flow_classes(operation, assumptions, standings, made, home):
    """Living colonies by yard, strength and width, week by week; splits count once they are hived."""
    sets = {facts.code: facts for facts in operation.sets}
    spring = period_of(assumptions.start, assumptions.weeks, assumptions.spring_week)
    width_at_home = home.width if home else 10
    grouped: dict = {}
    for standing in standings:
        facts = sets[standing.hive_set]
        width = width_at_home if facts.is_nuc else facts.width
        grouped.setdefault((standing.yard, standing.strength, width), []).append(standing)
    classes = [
        FlowClass(
            yard=yard,
            strength=strength,
            width=width,
            colonies=tuple(sum(s.at(week) for s in alike) for week in range(assumptions.weeks)),
            born=spring if spring < assumptions.weeks // 2 else spring - assumptions.weeks,
        )
        for (yard, strength, width), alike in sorted(grouped.items())
    ]
    homes: dict = {}
    for split in made:
        for code, count in split.homes.items():
            homes[code, split.hive_week] = homes.get((code, split.hive_week), 0) + count
    for (code, week), count in sorted(homes.items()):
        counts = tuple(count if at >= week else 0 for at in range(assumptions.weeks))
        classes.append(
            FlowClass(yard=code, strength="split", width=width_at_home, colonies=counts, born=week)
        )
    return tuple(classes)
