"""Draws the hives of a yard with the boxes that are about to go on or come off, by the numbers told in a form.

Takes the form of a boxes act and its box; gives a row of drawings that the page's script keeps up with the
steppers, deadouts among them with no number to press. Two questions to the database for a whole yard. Changes nothing.
"""

from django import template
from django.utils import timezone

from apiary.models import Colony
from inventory.forms.boxes import MOST, PullForm
from inventory.stack import CELL
from inventory.stack.marks import coming_off, going_on, path_of, rise_of
from inventory.templatetags.stacks import gear_on, stack_of, standing_in

register = template.Library()


@register.inclusion_tag("inventory/box_row.html", takes_context=True)
def box_row(context, form, box):
    """Every hive on one ground line; pressing the tag of a living one makes it an exception."""
    dead = deadouts_in(context.get("yard"), on=getattr(context.get("at"), "on", None))
    gear = gear_on([*(hive.colony for hive in form.hives), *dead])
    numbers = form.so_far()
    own = {hive.colony.pk for hive in form.excepted}
    stacks = [_stack(hive, gear[hive.colony.pk], numbers[hive], form, box) for hive in form.hives]
    for stack in stacks:
        stack["own"] = stack["hive"].colony.pk in own
    stacks += [_dead(colony, gear[colony.pk]) for colony in dead]
    stacks.sort(key=lambda stack: stack["colony"].tag)
    return {"stacks": stacks, "cell": CELL, "address": context["request"].get_full_path()}


def deadouts_in(yard, *, on):
    """Colonies of a yard that died by the day and still hold gear; they take nothing."""
    if yard is None:
        return []
    ended = standing_in(yard, on=on or timezone.localdate())
    return [colony for colony in ended if colony.ended_why == Colony.Ended.DIED]


def _dead(colony, holdings):
    stack = stack_of(colony, holdings)
    return {**stack, "rise": 0, "height": stack["drawing"].height}


def _stack(hive, holdings, number, form, box):
    drawn = stack_of(hive.colony, holdings)
    marks = _marks(hive, drawn["drawing"], form, box) if hive.fits else []
    shown = marks[:number]
    return {
        "colony": hive.colony,
        "hive": hive,
        "drawing": drawn["drawing"],
        "lines": drawn["lines"],
        "number": number,
        "marks": " ".join(f"{one.x},{one.y},{one.wide},{one.tall}" for one in marks),
        "path": path_of(shown),
        "rise": rise_of(shown),
        "height": drawn["drawing"].height + rise_of(shown),
    }


def _marks(hive, drawing, form, box):
    measures = {"depth": str(box.depth), "width": box.width, "most": MOST}
    if isinstance(form, PullForm):
        return coming_off(drawing, booked=hive.usual or 0, **measures)
    return going_on(drawing, **measures)
