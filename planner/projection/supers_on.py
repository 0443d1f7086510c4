"""Supers that stand on the hives already, a colony, by yard, strength and width.

Takes the operation and the assumptions; gives the boxes of the supers' depth beyond the colonies' own sets.
"""

from planner.projection.colonies import base_gear


def supers_on(operation, assumptions):
    """(yard, strength, width) -> supers a colony has on it, on average; worked out once an operation."""
    key = "supers on", assumptions.super_depth
    if key not in operation.worked_out:
        operation.worked_out[key] = _counted(operation, assumptions.super_depth)
    return operation.worked_out[key]


def _counted(operation, depth):
    boxes: dict = {}
    colonies: dict = {}
    for group in operation.colonies:
        facts = operation.sets_by_code[group.hive_set]
        part = f"box-{depth}-{facts.width}"
        extra = group.gear.get(part, 0) - base_gear(group, facts).get(part, 0)
        alike = group.yard, group.strength, facts.width
        boxes[alike] = boxes.get(alike, 0) + max(0, extra)
        colonies[alike] = colonies.get(alike, 0) + group.colonies
    return {alike: count / colonies[alike] for alike, count in boxes.items() if count}
