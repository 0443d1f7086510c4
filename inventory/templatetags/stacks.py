"""Draws the hives of a yard in a row, or one hive with its measures, from the books.

Takes a yard or a colony; two questions to the database for a whole yard. Changes nothing.
"""

from collections import defaultdict

from django import template
from django.db.models import Exists, OuterRef, Q
from django.utils import timezone

from apiary.models import Colony, HiveSet
from inventory.gear import Condition
from inventory.models import Holding
from inventory.stack import CELL, Lot, chain_of, draw, height_of, hive_of, words_of

register = template.Library()

A_ROW = 8  # stacks in a row of a wide screen: the first carries the staff
STAFF_STEP = 12 * 16  # a figure each foot
STATES = (
    ("drawn comb", "drawn", lambda box: box.drawn and not box.held),
    ("foundation", "foundation", lambda box: box.foundation and not box.held),
    ("bare frames", "bare", lambda box: box.bare and not box.held),
    ("held back", "held", lambda box: box.held),
)


@register.inclusion_tag("inventory/yard_stacks.html")
def yard_stacks(yard, as_of=None):
    """The colonies of a yard on one ground line: those alive, and deadouts that still hold gear."""
    colonies = standing_in(yard, on=as_of or timezone.localdate())
    gear = gear_on(colonies)
    stacks = [stack_of(colony, gear[colony.pk]) for colony in colonies]
    for number in range(0, len(stacks), A_ROW):
        row = stacks[number : number + A_ROW]
        tallest = max(height_of(stack["hive"]) for stack in row)
        row[0]["staff"] = _staff(row[0]["drawing"].height, tallest) if tallest >= STAFF_STEP else None
    boxes = [box for stack in stacks for box in stack["hive"].boxes]
    key = [{"word": word, "css": css} for word, css, found in STATES if any(found(box) for box in boxes)]
    hidden = any(stack["hive"].feeder or stack["hive"].inner_cover for stack in stacks)
    living = sum(not stack["ended"] for stack in stacks)
    words = f"{len(stacks) - living} ended, {living} living" if living < len(stacks) else f"{living} living"
    return {"stacks": stacks, "key": key, "hidden": hidden, "cell": CELL, "yard": yard, "sum": words}


@register.inclusion_tag("inventory/colony_stack.html")
def colony_stack(colony):
    """One hive with its dimension chain and balloons, and the table of what the numbers mean."""
    stack = stack_of(colony, gear_on([colony])[colony.pk])
    chain = chain_of(stack["drawing"])
    rows = [
        {"number": balloon.number, "name": balloon.name, "piece": piece, "words": frames_in(piece.box)}
        for balloon, piece in zip(chain.balloons, stack["drawing"].pieces, strict=False)
    ]
    return {"stack": stack, "chain": chain, "rows": rows, "colony": colony}


@register.inclusion_tag("inventory/colony_gear.html")
def colony_gear(colony):
    """The table of all gear the book has on one colony."""
    return {"holdings": gear_on([colony])[colony.pk], "colony": colony}


def frames_in(box):
    """8 drawn, 2 foundation; empty for what holds no frames."""
    if box is None:
        return ""
    counts = ((box.drawn, "drawn"), (box.foundation, "foundation"), (box.bare, "bare"))
    return ", ".join(f"{number} {word}" for number, word in counts if number)


def standing_in(yard, *, on):
    """Colonies of a yard that are there to be drawn, with their sets, in the order of their tags."""
    gear = Holding.objects.filter(location__colony=OuterRef("pk"), quantity__gt=0)
    ended_with_gear = Q(ended_on__lte=on) & Exists(gear)
    alive = Q(pk__in=Colony.objects.alive(on=on).values("pk"))
    return list(
        Colony.objects.in_yard(yard)
        .filter(alive | ended_with_gear)
        .select_related("hive_set")
        .order_by("tag")
    )


def gear_on(colonies):
    """What lies on each colony by the book: lists of holdings by the colony's key, one question for all."""
    holdings = (
        Holding.objects.filter(location__colony__in=colonies, quantity__gt=0)
        .select_related("part", "location")
        .order_by("part__code", "condition")
    )
    by_colony = defaultdict(list)
    for holding in holdings:
        by_colony[holding.location.colony_id].append(holding)
    return by_colony


def _lot(holding):
    part = holding.part
    return Lot(
        kind=part.kind,
        quantity=holding.quantity,
        depth=part.depth,
        width=part.width or 0,
        comb=part.comb,
        comb_use=part.comb_use,
        held=holding.condition == Condition.HELD,
        wide=round((part.width_in or 0) * 16),
        tall=round((part.height_in or 0) * 16),
    )


def stack_of(colony, holdings):
    """The drawing of a colony's hive and the lines of its caption."""
    hive_set, dead = colony.hive_set, colony.ended_why == Colony.Ended.DIED
    hive = hive_of(
        [_lot(holding) for holding in holdings if not holding.part.flat],
        brood_boxes={
            "deep": hive_set.deep_boxes,
            "medium": hive_set.medium_boxes,
            "shallow": hive_set.shallow_boxes,
        },
        dead=dead,
        pallet=hive_set.base == HiveSet.Base.PALLET,
        migratory=hive_set.cover == HiveSet.Cover.MIGRATORY,
    )
    lines = words_of(hive)
    if hive.boxes and hive.boxes[0].width == 8:
        lines.append("8-frame")
    ended = "" if colony.ended_on is None else "Dead" if dead else colony.get_ended_why_display()
    return {
        "colony": colony,
        "hive": hive,
        "drawing": draw(hive),
        "lines": lines,
        "ended": ended,
        "dead": dead,
    }


def _staff(height, tallest):
    """Ticks each 3 in from the ground, with a figure each foot, in the units of the first stack of a row."""
    top = tallest - tallest % 48
    ticks = [
        {"y": height - up, "foot": up % STAFF_STEP == 0, "label": up // 16} for up in range(0, top + 1, 48)
    ]
    return {"top": height - top, "bottom": height, "ticks": ticks}
