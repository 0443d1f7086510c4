"""One scenario of the season worked out, week by week: the pipeline of the projection.

Takes the operation, the assumptions and a scenario; gives a Projection. Same in, same out.
"""

from operator import add

from planner.projection.ahead import within_season
from planner.projection.colonies import by_week, deadouts, standing_colonies
from planner.projection.drawing import build_up_drawing, drawing
from planner.projection.feed import consumables, feed_needs
from planner.projection.flow import FlowClass, super_needs
from planner.projection.gear_of_season import culled_combs, second_boxes, small_gear
from planner.projection.homes import split_homes, width_at
from planner.projection.records import Projection
from planner.projection.splits import splits
from planner.season.calendar import period_of

SPLIT = "split"


def project(operation, assumptions, scenario):
    """Colonies, deadouts, splits, boxes, supers, feed and consumables of one way the year may go."""
    standings = standing_colonies(operation, assumptions, scenario)
    dead = deadouts(operation, assumptions, standings)
    made = splits(operation, assumptions, standings, scenario)
    homes = split_homes(operation, assumptions)
    classes = flow_classes(operation, assumptions, standings, made, homes)
    supers, crop_lb, by_class = super_needs(operation, assumptions, classes, scenario)
    living: dict = {}
    for flow_class in classes:
        before = living.get((flow_class.yard, flow_class.strength))
        counts = flow_class.colonies
        living[flow_class.yard, flow_class.strength] = tuple(map(add, before, counts)) if before else counts
    of_splits = [flow_class.colonies for flow_class in classes if flow_class.strength == SPLIT]
    standing = by_week(standings, assumptions.weeks)
    all_colonies = tuple(map(sum, zip(standing, *of_splits, strict=True)))
    crop_week = max((need.last for need in supers), default=0)
    whole = Projection(
        code=scenario.code,
        probability=scenario.probability,
        colonies=living,
        deadouts=dead,
        splits=made,
        second_boxes=tuple(second_boxes(operation, assumptions, standings, made, homes, by_class)),
        supers=supers,
        feed=feed_needs(operation, assumptions, standings, made, scenario, dead),
        small_gear=tuple(small_gear(operation, assumptions, classes, supers)),
        consumables=consumables(operation, assumptions, all_colonies, crop_lb, crop_week),
        drawing=(
            *drawing(operation, assumptions, classes),
            *build_up_drawing(operation, assumptions, classes, made),
        ),
        culled_combs=culled_combs(operation, assumptions, standings),
        crop_lb=crop_lb,
    )
    return within_season(whole, assumptions)


def flow_classes(operation, assumptions, standings, made, homes):
    """Living colonies by yard, strength and width, week by week; splits count once they are hived."""
    sets = operation.sets_by_code
    spring = period_of(assumptions.start, assumptions.weeks, assumptions.spring_week)
    grouped: dict = {}
    for standing in standings:
        facts = sets[standing.hive_set]
        width = width_at(homes, standing.yard) if facts.is_nuc else facts.width
        grouped.setdefault((standing.yard, standing.strength, width), []).append(standing)
    classes = [
        FlowClass(
            yard=yard,
            strength=strength,
            width=width,
            colonies=by_week(alike, assumptions.weeks),
            born=spring if spring < assumptions.weeks // 2 else spring - assumptions.weeks,
        )
        for (yard, strength, width), alike in sorted(grouped.items())
    ]
    hived: dict = {}
    for split in made:
        for code in split.homes:
            hived.setdefault((code, split.hive_week), []).append(split)
    for (code, week), alike in sorted(hived.items()):
        counts = tuple(map(sum, zip(*(s.by_week(code, assumptions.weeks) for s in alike), strict=True)))
        classes.append(
            FlowClass(yard=code, strength=SPLIT, width=width_at(homes, code), colonies=counts, born=week)
        )
    return tuple(classes)
